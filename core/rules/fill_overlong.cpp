// The fill has taken far longer than the water that was still to come needs.
#include <algorithm>

#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

// Of the temperature-corrected time: a tired membrane at low pressure gives a third. [choice]
constexpr double times_longer = 3;
// Of what this purifier has taken for the same before. [choice]
constexpr double times_longer_learned = 1.5;

// How many times the litres that are meant may have been expected to come.
double times_allowed(const state::LearnedFlow& learned) {
  if (learned.fills < state::learned_from || learned.share <= 0) return times_longer;
  return std::min(times_longer, times_longer_learned / learned.share);
}

Judgement overlong(const picture::Picture& picture, double hours_allowed) {
  const state::Fill& fill = picture.ledger.fill;
  return {Verdict::on,
          {Why::fill_overlong,
           no_subject,
           {static_cast<float>(hours(fill.worked)), static_cast<float>(hours_allowed),
            static_cast<float>(fill.gained.value)}},
          never};
}

Judgement judge(const picture::Picture& picture) {
  const state::Fill& fill = picture.ledger.fill;
  if (!fill.under_way || !picture.driving) return {};
  const Duration longest = picture.room.actuators[*picture.driving].run_longest;
  if (fill.worked >= longest) return overlong(picture, hours(longest));

  const auto level = room::find(picture.room, room::Quantity::level, room::Place::vat);
  const double step = level ? picture.room.instruments[*level].step : 0;
  // What is drawn meanwhile must be filled again; one gauge step may have been hidden at the start.
  const Litres meant = fill.to_go + fill.drawn + Litres{step};
  if (meant.value <= 0) return {};
  const Litres allowed = times_allowed(picture.ledger.learned) * meant;
  if (fill.expected < allowed) return {};
  return overlong(picture, hours(fill.worked) * (allowed / fill.expected));
}

bool applies(const room::Room& room) {
  return room.purifier && room.purifier->driven_by < room.actuators.size();
}

}  // namespace

extern const Rule fill_overlong{
    .id = room::RuleId::fill_overlong,
    .name = "fill_overlong",
    .title = "The fill takes too long",
    .priority = Priority::soon,
    .latching = Latching::on_repeat,
    .respond_within = 12h,
    .on_delay = 0s,
    .off_delay = 10min,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the running time and the water's temperature, and what three fills before took",
        .limit = "3 times the running time that the missing litres need at this water temperature, "
                 "what was drawn meanwhile added; after three fills 1.5 times what those took for "
                 "as much; and never over the longest run of the file",
        .origin = "our own choice",
        .causes = "a clogged filter or membrane, low feed pressure, a hidden leak, a stuck gauge, "
                  "somebody who takes water",
        .consequence = "water is wasted, or runs where nobody looks",
        .action = "Look at the whole line from the feed cock to the vat. Check the prefilter, the "
                  "feed pressure and the gauge",
        .automatic = "the fill stops; the second time the pump stays off until a person resets",
        .test = "set the rated flow ten times too high in a copy of the file and rehearse it"}};

}  // namespace tidewright::rules
