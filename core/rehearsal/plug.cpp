#include "core/rehearsal/plug.hpp"

namespace tidewright::rehearsal {

void Plug::obey(bool on, Instant now) {
  // The same said again does not begin a valve's travel anew.
  const bool under_way = effective_ != never && commanded_ == on;
  commanded_ = on;
  if (under_way) return;
  effective_ = now + settings_.obeys_after + actuator_->travel;
}

void Plug::press(Instant now) { set(!on_, now); }

void Plug::mend_timer(Instant now) {
  faults.timer.reset();
  lease_ends_ =
      on_ && actuator_->lease_kind != room::LeaseKind::none ? now + actuator_->lease : never;
}

void Plug::reboot(bool on, Instant now) {
  effective_ = lease_ends_ = never;
  set(on, now);
}

void Plug::set(bool on, Instant now) {
  if (on ? faults.ignores_on : faults.ignores_off) return;
  const bool begins = on && !on_;
  const room::LeaseKind kind = faults.timer.value_or(actuator_->lease_kind);
  const bool renewed = kind != room::LeaseKind::plug_fixed;
  const bool timed = kind != room::LeaseKind::none;
  if (!on) lease_ends_ = never;
  if (on && timed && (begins || renewed)) lease_ends_ = now + actuator_->lease;
  if (on != on_) since_ = now;
  on_ = on;
  // A word that is under way is not put off by the same said again.
  word_due_ = std::min(word_due_, now + settings_.feedback_lags + faults.lags);
}

void Plug::live(Instant now) {
  if (effective_ <= now) {
    const Instant at = effective_;
    effective_ = never;
    set(commanded_, at);
  }
  if (lease_ends_ <= now) {
    const Instant at = lease_ends_;
    lease_ends_ = never;
    set(false, at);
  }
}

bool Plug::has_word(Instant now) {
  if (next_word() > now) return false;
  word_due_ = settings_.feedback_every > Duration{0} ? now + settings_.feedback_every : never;
  return true;
}

}  // namespace tidewright::rehearsal
