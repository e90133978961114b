// Keeps the page up to date: the server sends the very HTML that it would send at once, this swaps
// it in. What was heard last is told by this page's own clock.
"use strict";
(() => {
  const quietMost = 25000; // the server says something every 10 s
  const brokenMost = 2000; // a short gap is not told
  const answerStands = 125000; // the server's two minutes, and a little
  const offline = document.getElementById("offline");
  let heardAt = Date.now();
  let brokenAt = 0; // 0: the line stands
  let source;

  function swap(html) {
    const holder = document.createElement("template");
    holder.innerHTML = html;
    for (const fresh of holder.content.children) {
      const shown = document.getElementById(fresh.id);
      if (!shown || shown.outerHTML === fresh.outerHTML) continue;
      if (shown.dataset.own) {
        if (shown.dataset.mark !== fresh.dataset.mark) swapOwn(shown);
        continue;
      }
      // The section itself stays: a live region that is replaced is not read out.
      shown.className = fresh.className;
      shown.hidden = fresh.hidden;
      shown.innerHTML = fresh.innerHTML;
    }
  }

  // Who was let in has buttons of an own session, which the stream does not know.
  let asked = 0;
  async function swapOwn(shown) {
    const mine = ++asked;
    const answer = await fetch(shown.dataset.own).catch(() => null);
    if (!answer || mine !== asked) return; // the next change asks again; or has asked meanwhile
    if (!answer.ok) return location.reload(); // the session is over
    const holder = document.createElement("template");
    holder.innerHTML = await answer.text();
    const fresh = holder.content.firstElementChild;
    shown.hidden = fresh.hidden;
    shown.dataset.mark = fresh.dataset.mark;
    shown.innerHTML = fresh.innerHTML;
    forget(shown);
  }

  // What came of a request stands for two minutes, also on a wall that nobody touches again.
  function forget(shown) {
    if (shown && shown.querySelector("#came")) setTimeout(() => swapOwn(shown), answerStands);
  }

  function timeOfDay(milliseconds) {
    const twelve = offline.dataset.hours === "12";
    return new Date(milliseconds).toLocaleTimeString("en-GB", {
      hour: twelve ? "numeric" : "2-digit", minute: "2-digit", hour12: twelve,
    });
  }

  function look() {
    const now = Date.now();
    const quiet = now - heardAt > quietMost;
    const lost = quiet || (brokenAt > 0 && now - brokenAt > brokenMost);
    if (lost && offline.hidden) {
      offline.textContent = offline.dataset.words.replace("{time}", timeOfDay(heardAt));
    }
    offline.hidden = !lost;
    if (quiet || source.readyState === EventSource.CLOSED) open();
  }

  function heard(event) {
    heardAt = Date.now();
    brokenAt = 0;
    offline.hidden = true;
    swap(event.data);
  }

  let openedAt = 0;
  function open() {
    if (Date.now() - openedAt < 5000) return;
    openedAt = Date.now();
    if (source) source.close();
    source = new EventSource("/events");
    for (const kind of ["snapshot", "change", "beat"]) source.addEventListener(kind, heard);
    source.addEventListener("error", () => { if (brokenAt === 0) brokenAt = Date.now(); });
  }

  open();
  forget(document.querySelector("#answers[data-own]"));
  setInterval(look, 1000);
})();
