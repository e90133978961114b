#include "daemon/panel/chart.hpp"

#include <fmt/format.h>

#include "core/report/report.hpp"
#include "daemon/panel/html.hpp"

namespace tidewright::panel {
namespace {

constexpr double left = 84, right = 714, top = 24, bottom = 252;

struct Drawing {
  const Curve& curve;
  std::string_view unit;
  const WallClock& wall;
  const Style& style;
  std::vector<double> figures;  // of the axis, in the unit that is shown

  double shown(double value) const { return style.figure(value, unit).value; }
  double x(Instant at) const {
    return left + (right - left) * static_cast<double>((at - curve.from()).count()) /
                      static_cast<double>((curve.to() - curve.from()).count());
  }
  double x(std::size_t slice) const {
    return left + (right - left) * (static_cast<double>(slice) + 0.5) /
                      static_cast<double>(curve.slices().size());
  }
  double y(double value) const {
    const double low = figures.front(), high = figures.back();
    return bottom - (bottom - top) * (value - low) / (high - low);
  }
  // Where a tenth of the time has no reading, the line is broken: nobody knows what was in between.
  bool goes_on(std::size_t before, std::size_t slice) const {
    return before < slice && slice - before <= curve.slices().size() / 10;
  }
  std::string with_unit(double value) const {
    const Style::Figure figure = style.figure(value, unit);
    return style.number(figure.value) + " " + figure.unit;
  }
};

// The figures on the left and thin lines at them.
std::string upright(const Drawing& d) {
  std::string html;
  for (const double figure : d.figures) {
    html += fmt::format(R"(<path class="axis" d="M{:.1f} {:.1f}H{:.1f}"/>)"
                        R"(<text x="{:.1f}" y="{:.1f}" text-anchor="end">{}</text>)",
                        left, d.y(figure), right, left - 8, d.y(figure) + 5,
                        escaped(d.style.number(figure)));
  }
  const std::string unit = d.style.figure(0, d.unit).unit;
  return html + fmt::format(R"(<text x="{:.1f}" y="14">{}</text>)", left, escaped(unit));
}

// Five moments along the bottom; of longer times the day instead of the hour.
std::string along(const Drawing& d) {
  constexpr int moments = 5;
  const Duration span = d.curve.to() - d.curve.from();
  std::string html;
  for (int i = 0; i < moments; ++i) {
    const Instant at = d.curve.from() + span * i / (moments - 1);
    const auto local = local_time(report::wall_time(at, d.wall));
    if (!local) continue;
    const bool hours = span <= std::chrono::hours{36};
    const std::string text = hours ? d.style.time_of_day(*local) : d.style.day(*local).substr(5);
    const char* anchor = i == 0 ? "start" : i == moments - 1 ? "end" : "middle";
    html += fmt::format(R"(<path class="axis" d="M{:.1f} {:.1f}v6"/>)"
                        R"(<text x="{:.1f}" y="{:.1f}" text-anchor="{}">{}</text>)",
                        d.x(at), bottom, d.x(at), bottom + 24, anchor, escaped(text));
  }
  return html;
}

// The last of each slice as a line, its lowest to highest as a band.
std::string line(const Drawing& d) {
  const auto& slices = d.curve.slices();
  std::string curve, range;
  std::size_t before = slices.size();
  for (std::size_t i = 0; i < slices.size(); ++i) {
    if (!slices[i]) continue;
    const double x = d.x(i);
    const bool goes_on = d.goes_on(before, i);
    curve += fmt::format("{}{:.1f} {:.1f}", goes_on ? "L" : "M", x, d.y(d.shown(slices[i]->last)));
    if (!goes_on) curve += "h1";
    const double high = d.y(d.shown(slices[i]->highest)), low = d.y(d.shown(slices[i]->lowest));
    if (low - high >= 1) range += fmt::format("M{:.1f} {:.1f}V{:.1f}", x, high, low);
    before = i;
  }
  return fmt::format(R"(<path class="range" d="{}"/><path class="curve" d="{}"/>)", range, curve);
}

std::string marks(const Drawing& d) {
  std::string html;
  int number = 0;
  for (const Mark& mark : d.curve.marks()) {
    html += fmt::format(R"(<path class="event" d="M{:.1f} {:.1f}V{:.1f}"/>)"
                        R"(<text x="{:.1f}" y="{:.1f}" text-anchor="middle">{}</text>)",
                        d.x(mark.at), top, bottom, d.x(mark.at), top - 8, ++number);
  }
  return html;
}

// The same for the page's script: milliseconds of the household's own clock, and of each slice the
// lowest, the last and the highest; nothing where the line is broken.
std::string readings(const Drawing& d) {
  const Duration ahead = d.wall.ahead + d.wall.zone;
  const auto local = [&](Instant at) { return (at + ahead).time_since_epoch().count(); };
  const auto& slices = d.curve.slices();
  const Duration slice = (d.curve.to() - d.curve.from()) / static_cast<long>(slices.size());
  std::string rows, marks;
  std::size_t before = slices.size();
  for (std::size_t i = 0; i < slices.size(); ++i) {
    if (!slices[i]) continue;
    const Instant at = d.curve.from() + slice * static_cast<long>(i) + slice / 2;
    if (!rows.empty() && !d.goes_on(before, i)) {
      rows += fmt::format("[{},[null,null,null]],", local(at - slice));
    }
    rows += fmt::format("[{},[{:.6g},{:.6g},{:.6g}]],", local(at), d.shown(slices[i]->lowest),
                        d.shown(slices[i]->last), d.shown(slices[i]->highest));
    before = i;
  }
  rows.pop_back();
  for (const Mark& mark : d.curve.marks()) {
    marks += fmt::format("{}{}", marks.empty() ? "" : ",", local(mark.at));
  }
  return fmt::format(
      R"(<script type="application/json" id="readings">{{"unit":"{}","hours":{},"from":{},"to":{},)"
      R"("rows":[{}],"marks":[{}]}}</script>)",
      d.style.figure(0, d.unit).unit, d.style.twelve_hours() ? 12 : 24, local(d.curve.from()),
      local(d.curve.to()), rows, marks);
}

std::string list_of_marks(const Drawing& d) {
  std::string items;
  const std::string now = report::wall_time(d.curve.to(), d.wall);
  for (const Mark& mark : d.curve.marks()) {
    const std::string at = report::wall_time(mark.at, d.wall);
    items += element(
        "li", "",
        element("time", " datetime=\"" + escaped(at) + "\"", escaped(d.style.time(at, now))) +
            ": " + element("code", " lang=\"en\"", escaped(mark.what)) + ", " +
            escaped(d.style.said(Word::told, mark.who)));
  }
  return items.empty() ? items : element("ol", " class=\"marks\"", items);
}

}  // namespace

std::string chart(const Curve& curve, std::string_view unit, const WallClock& wall,
                  const Style& style) {
  const auto whole = curve.whole();
  if (!whole) return element("p", "", escaped(style.word(Word::history_empty)));
  Drawing d{curve, unit, wall, style, {}};
  d.figures = round_figures(d.shown(whole->lowest), d.shown(whole->highest));
  const std::string words =
      style.said(Word::lowest_highest, d.with_unit(whole->lowest), d.with_unit(whole->highest));
  const std::string svg =
      fmt::format(R"(<svg viewBox="0 0 730 284" role="img" aria-label="{}">{}{}{}{}</svg>)",
                  escaped(words), upright(d), along(d), line(d), marks(d));
  return element("figure", " class=\"chart\"",
                 svg +
                     element("p", " class=\"reading\" role=\"status\" hidden",
                             escaped(style.word(Word::read_the_curve))) +
                     element("figcaption", "", escaped(words)) + readings(d)) +
         list_of_marks(d);
}

}  // namespace tidewright::panel
