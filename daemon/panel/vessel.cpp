// The vat as it is: its outline, its water line, the marks at which a fill begins and ends, and
// where the line will be in an hour.
#include <fmt/format.h>

#include <algorithm>

#include "daemon/panel/html.hpp"
#include "daemon/panel/outline.hpp"
#include "daemon/panel/view.hpp"

namespace tidewright::panel {
namespace {

struct Label {
  double at;  // on the drawing
  std::string text;
  std::string_view kind;  // mark, level, hour
  double written = 0;     // where its text stands
};

// Moves labels apart that would stand on one another, within the drawing.
void spread(std::vector<Label>& labels, const Frame& frame) {
  constexpr double apart = 21;
  std::sort(labels.begin(), labels.end(),
            [](const Label& a, const Label& b) { return a.at < b.at; });
  double from = frame.top;
  for (Label& label : labels) {
    label.written = std::max(label.at, from);
    from = label.written + apart;
  }
  double to = frame.bottom;
  for (auto label = labels.rbegin(); label != labels.rend(); ++label) {
    label->written = std::min(label->written, to);
    to = label->written - apart;
  }
}

// Its line across the vat.
std::string across(const Label& label, const Frame& b) {
  if (label.kind == "hour") return {};
  return fmt::format(R"(<path class="{}" d="M{:.1f} {:.1f}H{:.1f}"/>)", label.kind, b.left,
                     label.at, b.right);
}

std::string beside(const Label& label, const Frame& b) {
  const std::string html = fmt::format(R"(<path class="leader" d="M{:.1f} {:.1f}L{:.1f} {:.1f}"/>)",
                                       b.right + 2, label.at, b.right + 16, label.written);
  return html + fmt::format(R"(<text class="{}" x="{:.1f}" y="{:.1f}">{}</text>)", label.kind,
                            b.right + 20, label.written + 5, escaped(label.text));
}

struct Drawing {
  const View& view;
  const room::Vat& vat;
  Frame frame{};

  double at(double litres) const {
    return surface(view.style.outline(), frame, litres / vat.capacity.value);
  }
};

// Litres in an hour, if they are known to rise or fall.
std::optional<double> in_an_hour(const Drawing& drawing, const Facts& facts, double litres) {
  const auto rate = facts.number("rate_l_h");
  if (!rate || std::abs(*rate) < drawing.vat.capacity.value * 0.005) return std::nullopt;
  if (*rate > 0 && facts.text("state") != "filling") return std::nullopt;  // it was so, and is over
  const auto& stop = drawing.vat.stop_at;
  const double brim =
      *rate > 0 && stop ? std::max(stop->value, litres) : drawing.vat.capacity.value;
  return std::clamp(litres + *rate, 0.0, brim);
}

std::string water(const Drawing& drawing, double litres, std::optional<double> later) {
  const Frame& b = drawing.frame;
  const auto band = [&](std::string_view kind, double top, double bottom) {
    return fmt::format(R"(<rect class="{}" x="{:.1f}" y="{:.1f}" width="{:.1f}" height="{:.1f}"/>)",
                       kind, b.left, top, b.right - b.left, std::max(0.0, bottom - top));
  };
  const double level = drawing.at(litres);
  std::string html = band("water", level, b.bottom);
  if (later) {
    const double then = drawing.at(*later);
    html += band("hour", std::min(level, then), std::max(level, then));
  }
  return html;
}

std::vector<Label> labels(const Drawing& drawing, std::optional<double> litres,
                          std::optional<double> later) {
  const Style& style = drawing.view.style;
  std::vector<Label> found;
  const auto mark = [&](Word word, const std::optional<Litres>& at) {
    if (!at) return;
    found.push_back({drawing.at(at->value), style.said(word, style.litres(at->value)), "mark"});
  };
  mark(Word::mark_stop, drawing.vat.stop_at);
  mark(Word::mark_enough, drawing.vat.enough);
  if (drawing.vat.start_below != drawing.vat.enough)
    mark(Word::mark_start, drawing.vat.start_below);
  if (litres) found.push_back({drawing.at(*litres), style.litres(*litres), "level"});
  if (later) {
    found.push_back(
        {drawing.at(*later), style.said(Word::in_an_hour, style.litres(*later)), "hour"});
  }
  spread(found, drawing.frame);
  return found;
}

// What the drawing shows, for who cannot see it.
std::string in_words(const Drawing& drawing, const std::vector<Label>& all, bool known) {
  const Style& style = drawing.view.style;
  std::string text = std::string(style.word(Word::vessel)) + ": ";
  if (!known) text += std::string(style.word(Word::level_unknown)) + " ";
  for (const Label& label : all) {
    text += label.kind == "level"
                ? style.said(Word::holds_of, label.text, style.litres(drawing.vat.capacity.value))
                : label.text;
    text += "; ";
  }
  return text.substr(0, text.size() - 2) + ".";
}

}  // namespace

std::string vessel(const View& view) {
  if (!view.household.room.vat) return {};
  const Drawing drawing{view, *view.household.room.vat};
  const Facts facts(view.report, "vat");
  const auto litres = facts.number("volume_l");
  const auto later = litres ? in_an_hour(drawing, facts, *litres) : std::nullopt;
  const std::vector<Label> all = labels(drawing, litres, later);
  const std::string d = outline_path(view.style.outline(), drawing.frame);
  std::string html = fmt::format(R"(<svg viewBox="0 0 290 232" role="img" aria-label="{}">)"
                                 R"(<clipPath id="inside"><path d="{}"/></clipPath>)",
                                 escaped(in_words(drawing, all, litres.has_value())), d);
  std::string inside = litres ? water(drawing, *litres, later) : std::string{};
  for (const Label& label : all) inside += across(label, drawing.frame);
  html += element("g", " clip-path=\"url(#inside)\"", inside);
  if (!litres) {
    html += fmt::format(R"(<text class="nothing" x="{}" y="{}">{}</text>)",
                        (drawing.frame.left + drawing.frame.right) / 2, 130,
                        view.style.word(Word::nothing_known));
  }
  html += fmt::format(R"(<path class="vat" d="{}"/>)", d);
  for (const Label& label : all) html += beside(label, drawing.frame);
  return html + "</svg>";
}

}  // namespace tidewright::panel
