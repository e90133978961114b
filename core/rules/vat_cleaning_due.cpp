// The vat has not been cleaned for as long as the household allows.
#include <algorithm>

#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

Judgement judge(const picture::Picture& picture) {
  if (!picture.room.vat || !picture.room.vat->clean_every) return {};
  const Duration every = *picture.room.vat->clean_every;
  const state::Upkeep& upkeep = picture.ledger.upkeep;
  const Instant since = std::max(upkeep.cleaned, upkeep.began);
  if (since == long_ago) return {};
  if (picture.now < since + every) return {Verdict::off, {}, since + every};
  return {Verdict::on,
          {Why::cleaning_due,
           no_subject,
           {static_cast<float>(hours(picture.now - since)), static_cast<float>(hours(every))}},
          never};
}

bool applies(const room::Room& room) { return room.vat && room.vat->clean_every; }

}  // namespace

extern const Rule vat_cleaning_due{
    .id = room::RuleId::vat_cleaning_due,
    .name = "vat_cleaning_due",
    .title = "The vat is due for cleaning",
    .priority = Priority::days,
    .latching = Latching::never,
    .respond_within = std::chrono::days{14},
    .on_delay = 0s,
    .off_delay = 0s,
    .applies = applies,
    .judge = judge,
    .record = {.source = "the day on which `cleaned` was told last, or the daemon's first day",
               .limit = "the file's clean_every",
               .origin = "the household's choice; without that key it is not judged",
               .causes = "slime and dust gather in every vat",
               .consequence = "germs grow, the float and the gauge stick",
               .action = "Empty the vat, wipe it out, rinse it, free the float and the gauge. Then "
                         "tell `cleaned`",
               .automatic = "nothing: water is made as before",
               .test = "set clean_every to 7 days in a copy of the file and rehearse it"}};

}  // namespace tidewright::rules
