// Every rule once a step, and the delays that keep a flicker from being an alarm.
#include <algorithm>

#include "core/rules/catalogue.hpp"

namespace tidewright::rules {
namespace {

void begin(state::Finding& finding, Instant now) {
  finding.active = true;
  finding.active_since = now;
  std::copy_backward(finding.activations.begin(), finding.activations.end() - 1,
                     finding.activations.end());
  finding.activations[0] = now;
}

// Lets the raw judgement become the finding once it has stood for its delay.
void delay(const room::RuleSettings& settings, Instant now, state::Finding& finding, Wake& wake) {
  if (finding.raw == finding.active) return;
  const Instant due = finding.raw_since + (finding.raw ? settings.on_delay : settings.off_delay);
  if (now < due) {
    wake.by(due);
  } else if (finding.raw) {
    begin(finding, now);
  } else {
    finding.active = false;
  }
}

}  // namespace

void judge(const picture::Picture& picture, state::Findings& findings, Wake& wake) {
  for (const Rule* rule : catalogue) {
    state::Finding& finding = findings[rule->id];
    const Judgement judgement = rule->judge(picture);
    wake.by(judgement.judge_again);
    const bool raw =
        judgement.verdict == Verdict::unknown ? finding.raw : judgement.verdict == Verdict::on;
    if (raw != finding.raw) {
      finding.raw = raw;
      finding.raw_since = picture.now;
    }
    if (judgement.verdict == Verdict::on) finding.why = judgement.why;
    delay(picture.room.rules[rule->id], picture.now, finding, wake);
  }
}

}  // namespace tidewright::rules
