// The path of the water as one line: feed, membrane, resin, vat; each place with its number and
// how far that is to be believed. Concentrate branches off.
#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "daemon/panel/html.hpp"
#include "daemon/panel/view.hpp"

namespace tidewright::panel {
namespace {

enum class Where : std::uint8_t { feed, membrane, lead, lag, vat };

// Where to look when that alarm stands.
struct Trouble {
  std::string_view rule;
  Where where;
};
constexpr std::array troubles{
    Trouble{"pump_dry", Where::feed},
    Trouble{"feed_changed", Where::feed},
    Trouble{"membrane_rejection_low", Where::membrane},
    Trouble{"resin_near_end", Where::lead},
    Trouble{"resin_breakthrough", Where::lag},
    Trouble{"vat_high_high", Where::vat},
    Trouble{"fill_not_stopping", Where::vat},
    Trouble{"level_lost", Where::vat},
    Trouble{"level_flat_while_filling", Where::vat},
    Trouble{"fill_overlong", Where::vat},
    Trouble{"water_balance_off", Where::vat},
    Trouble{"draw_unusual", Where::vat},
    Trouble{"vat_low", Where::vat},
    Trouble{"water_aged", Where::vat},
    Trouble{"vat_cleaning_due", Where::vat},
};

bool in_trouble(const View& view, Where where) {
  return std::any_of(view.alarms.begin(), view.alarms.end(), [&](const Standing& alarm) {
    return std::any_of(troubles.begin(), troubles.end(), [&](const Trouble& trouble) {
      return trouble.where == where && trouble.rule == alarm.id;
    });
  });
}

// A place's number, already with its unit; or why there is none.
struct Shown {
  std::string figure;
  std::string why;  // HTML
};

struct Place {
  Word name;
  Shown shown;
  bool trouble = false;
  std::string more = {};  // a second number
  std::string_view kind = {};
};

// Shape and word, never colour alone.
std::string quality(const View& view, const Place& place) {
  const Style& style = view.style;
  const auto mark = [](std::string_view shape) {
    return element("span", " aria-hidden=\"true\" class=\"shape\"", shape);
  };
  const bool known = !place.shown.figure.empty();
  if (place.trouble) {
    return mark("▲") + escaped(style.word(Word::look_here)) + (known ? "" : ": " + place.shown.why);
  }
  if (!known) return mark("○") + place.shown.why;
  return mark("●") + escaped(style.word(Word::good));
}

std::string written(const View& view, const Place& place) {
  std::string kind = place.trouble ? "trouble" : std::string(place.kind);
  const std::string figure = place.shown.figure.empty()
                                 ? std::string(view.style.word(Word::nothing_known))
                                 : escaped(place.shown.figure);
  return element(
      "li", kind.empty() ? "" : " class=\"" + kind + "\"",
      element("span", " class=\"name\"", escaped(view.style.word(place.name))) + " " +
          element("span", " class=\"figure\"", figure) + " " +
          (place.more.empty() ? ""
                              : element("span", " class=\"more\"", escaped(place.more)) + " ") +
          element("span", " class=\"quality\"", quality(view, place)));
}

// Core names the instrument first, "the vat gauge: …"; here it stands at its place already.
std::string reason(const View& view, const std::string& why) {
  const std::size_t colon = why.find(": ");
  return view.style.sentence(colon == why.npos ? why : why.substr(colon + 2));
}

// A meter's value; `not measured` where there is no meter.
Shown measured(const View& view, const Facts& facts, const std::string& name,
               const std::string& unit) {
  if (const auto value = facts.number(name)) return {view.style.number(*value) + " " + unit, {}};
  if (!facts.knows(name + "_status")) return {{}, escaped(view.style.word(Word::not_measured))};
  return {{}, reason(view, facts.why(name))};
}

Shown membrane(const View& view, const Facts& purifier) {
  const auto rejection = purifier.number("rejection_percent");
  if (rejection) return {view.style.said(Word::held_back, view.style.number(*rejection)), {}};
  if (!purifier.knows("permeate_tds_ppm_status")) {
    return {{}, escaped(view.style.word(Word::not_measured))};
  }
  return {{}, reason(view, purifier.why("rejection_percent"))};
}

Shown level(const View& view, const Facts& vat) {
  if (const auto litres = vat.number("volume_l")) return {view.style.litres(*litres), {}};
  return {{}, reason(view, vat.why("volume_l"))};
}

std::vector<Place> places(const View& view) {
  const Style& style = view.style;
  const Facts purifier(view.report, "purifier"), resin(view.report, "resin"),
      vat(view.report, "vat");
  std::vector<Place> all;
  if (purifier) {
    all.push_back({Word::feed, measured(view, purifier, "feed_tds_ppm", "ppm"),
                   in_trouble(view, Where::feed)});
    all.push_back({Word::membrane, membrane(view, purifier), in_trouble(view, Where::membrane)});
    if (purifier.knows("concentrate_flow_l_h")) {
      const double flow = *purifier.number("concentrate_flow_l_h");
      all.push_back({Word::concentrate, {style.litres_an_hour(flow), {}}, false, {}, "branch"});
    }
    Place lead{Word::first_resin, measured(view, purifier, "lead_outlet_tds_ppm", "ppm"),
               in_trouble(view, Where::lead)};
    if (const auto left = resin.number("litres_left")) {
      lead.more = style.said(Word::litres_left, style.litres(*left));
    }
    all.push_back(std::move(lead));
    all.push_back({Word::second_resin, measured(view, purifier, "product_tds_ppm", "ppm"),
                   in_trouble(view, Where::lag)});
  }
  if (vat) {
    Place last{Word::vat, level(view, vat), in_trouble(view, Where::vat)};
    if (const auto days = vat.number("days_of_top_off")) {
      last.more = style.said(Word::days_left, style.number(std::floor(*days)));
    }
    all.push_back(std::move(last));
  }
  return all;
}

}  // namespace

std::string path(const View& view) {
  const std::vector<Place> all = places(view);
  // Where no place has a meter, there is nothing to say of any.
  const std::string unmeasured = escaped(view.style.word(Word::not_measured));
  const bool any = std::any_of(all.begin(), all.end(), [&](const Place& place) {
    return !place.shown.figure.empty() || place.shown.why != unmeasured;
  });
  if (!any) return {};
  std::string items;
  for (const Place& place : all) items += written(view, place);
  const bool moves = Facts(view.report, "purifier").text("state") == "running";
  return element("h2", "", escaped(view.style.word(Word::path))) +
         element("ol", moves ? " class=\"moving\"" : "", items);
}

}  // namespace tidewright::panel
