// The run before ended without notice, so the room may not be as the records say.
#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

constexpr Duration shown_for = 5min;  // the same time for which nothing starts

Judgement judge(const picture::Picture& picture) {
  const state::Circumstances& now = picture.circumstances;
  const Instant ends = now.started + shown_for;
  if (!now.unclean || picture.now >= ends) return {};
  return {Verdict::on,
          {Why::stopped_without_notice, no_subject, {static_cast<float>(seconds(now.away))}},
          ends};
}

bool applies(const room::Room&) { return true; }

}  // namespace

extern const Rule unclean_start{
    .id = room::RuleId::unclean_start,
    .name = "unclean_start",
    .title = "Started after a power cut or crash",
    .priority = Priority::days,
    .latching = Latching::never,
    .respond_within = 24h,
    .on_delay = 0s,
    .off_delay = 0s,
    .consequence_of = room::RuleId::records_unreadable,
    .applies = applies,
    .judge = judge,
    .record = {.source = "the note that the run before left on the disk",
               .limit = "the run before did not end on purpose, or its records could not be read",
               .origin = "our own choice",
               .causes = "a power cut, a crash, a full disk",
               .consequence = "what happened meanwhile is not known",
               .action = "Look at the room when you pass by: dry floor, vat, plugs",
               .automatic =
                   "everything is switched off, and nothing starts for 5 min; then a fill goes "
                   "on by itself",
               .test = "cut the power of the daemon's machine"}};

}  // namespace tidewright::rules
