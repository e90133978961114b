// The water in the vat is old: germs and what the air brings have had their time in it.
#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

constexpr double ends_at = 0.9;  // of the limit

Judgement judge(const picture::Picture& picture) {
  if (!picture.room.vat || !picture.room.vat->water_age_longest) return {};
  const Duration limit = *picture.room.vat->water_age_longest;
  const Duration age = picture.ledger.upkeep.water_age;
  const bool active = picture.findings[room::RuleId::water_aged].active;
  const Duration ends{
      static_cast<Duration::rep>(static_cast<double>(limit.count()) * (active ? ends_at : 1))};
  if (age <= ends) return {Verdict::off, {}, picture.now + (ends - age) + 1s};
  return {Verdict::on,
          {Why::water_old,
           no_subject,
           {static_cast<float>(hours(age)), static_cast<float>(hours(limit))}},
          never};
}

bool applies(const room::Room& room) {
  return room.vat && room.vat->water_age_longest &&
         room::find(room, room::Quantity::level, room::Place::vat).has_value();
}

}  // namespace

extern const Rule water_aged{
    .id = room::RuleId::water_aged,
    .name = "water_aged",
    .title = "The water in the vat is old",
    .priority = Priority::days,
    .latching = Latching::never,
    .respond_within = std::chrono::days{7},
    .on_delay = 10min,
    .off_delay = 10min,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the vat's gauge: each litre that comes in is new, each that is drawn takes the "
                  "mean age along; the first water counts as new",
        .limit = "the file's water_age_longest, as a mean age",
        .origin = "the household's choice; without that key it is not judged",
        .deadband = "it ends at nine tenths of that",
        .causes = "little water is used, a vat too large for it",
        .consequence = "germs and slime grow in the vat; the water takes up what is in the air",
        .action = "Use the water, or drain the vat to half and let it fill anew; stop lower from "
                  "now on (`stop_at`)",
        .automatic = "nothing: water is made as before",
        .test = "compare with the litres that you draw in a week"}};

}  // namespace tidewright::rules
