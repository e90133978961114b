// The history's curve, to be read moment by moment and enlarged, by dygraphs. Until this has run, and
// where it does not, the server's drawing of the same readings stands in its place.
"use strict";
(() => {
  const held = document.getElementById("readings");
  if (!held || typeof Dygraph === "undefined") return;
  const told = JSON.parse(held.textContent);
  const figure = held.parentElement;
  const drawing = figure.querySelector("svg");
  const reading = figure.querySelector(".reading");
  const hint = reading.textContent;
  const language = document.documentElement.lang;
  const number = new Intl.NumberFormat(language, { maximumSignificantDigits: 4, useGrouping: false });

  // The household's own clock: the server has reckoned it in, so that these count as UTC.
  const day = (at) => new Date(at).toISOString().slice(5, 10);
  function clock(at) {
    const [hour, minute] = new Date(at).toISOString().slice(11, 16).split(":");
    if (told.hours === 24) return `${hour}:${minute}`;
    return `${hour % 12 || 12}:${minute} ${hour < 12 ? "am" : "pm"}`;
  }

  function say(row) {
    const [at, [lowest, last, highest]] = told.rows[row];
    if (last === null) return;
    const text = `${day(at)} ${clock(at)}: ${number.format(last)} ${told.unit}`;
    const range = lowest < highest ? ` (${number.format(lowest)} – ${number.format(highest)})` : "";
    reading.textContent = text + range;
  }

  function colours() {
    const style = getComputedStyle(document.documentElement);
    const colour = (name) => style.getPropertyValue(name).trim();
    return { colors: [colour("--water")], axisLineColor: colour("--line"), gridLineColor: colour("--line") };
  }

  // Numbered as in the list below the curve.
  function drawMarks(canvas, area, graph) {
    canvas.fillStyle = getComputedStyle(document.documentElement).getPropertyValue("--trouble");
    canvas.font = "14px system-ui, sans-serif";
    told.marks.forEach((at, n) => {
      const x = graph.toDomXCoord(at);
      if (x < area.x || x > area.x + area.w) return;
      canvas.fillRect(x - 1, area.y, 2, area.h);
      canvas.fillText(String(n + 1), x + 4, area.y + 14);
    });
  }

  // A finger scrolls the page; a tap shows the reading, as the mouse does.
  const whole = { dateWindow: [told.from, told.to] };
  const interactionModel = { ...Dygraph.defaultInteractionModel,
    dblclick: (event, graph) => graph.updateOptions(whole) };
  for (const kind of ["touchstart", "touchmove", "touchend"]) delete interactionModel[kind];
  // Ours stands below; that one writes styles into the page, which its policy forbids.
  Dygraph.PLUGINS = Dygraph.PLUGINS.filter((plugin) => plugin !== Dygraph.Plugins.Legend);

  const holder = document.createElement("div");
  holder.className = "readable";
  holder.tabIndex = 0;
  holder.setAttribute("role", "group");
  holder.setAttribute("aria-label", drawing.getAttribute("aria-label"));
  drawing.replaceWith(holder);
  reading.hidden = false;
  const hoursShown = (graph) => (graph.xAxisRange()[1] - graph.xAxisRange()[0]) / 3.6e6;
  const graph = new Dygraph(holder, told.rows.map(([at, values]) => [new Date(at), values]), {
    ...colours(), labels: ["time", told.unit], customBars: true, labelsUTC: true,
    ...whole, fillAlpha: 0.3, strokeWidth: 2, gridLineWidth: 0.4,
    highlightCircleSize: 5, interactionModel, underlayCallback: drawMarks,
    highlightCallback: (event, x, points, row) => say(row),
    unhighlightCallback: () => { reading.textContent = hint; },
    axes: {
      x: { axisLabelWidth: 56, pixelsPerLabel: 56, axisLabelFormatter: (at, step, options, graph) => (
        hoursShown(graph) > 36 || at % 8.64e7 === 0 ? day(at) : clock(at)) },
      y: { axisLabelWidth: 76, axisLabelFormatter: (value) => `${number.format(value)} ${told.unit}` },
    },
  });

  let row = told.rows.length;
  holder.addEventListener("keydown", (event) => {
    const last = told.rows.length - 1;
    const to = { ArrowLeft: row - 1, ArrowRight: row + 1, Home: 0, End: last }[event.key];
    if (event.key === "Escape") graph.updateOptions(whole);
    if (to === undefined) return;
    event.preventDefault();
    row = Math.min(Math.max(to, 0), last);
    graph.setSelection(row);
    say(row);
  });
  matchMedia("(prefers-color-scheme: light)").addEventListener("change", () => graph.updateOptions(colours()));
})();
