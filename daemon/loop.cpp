#include "daemon/loop.hpp"

#include <poll.h>

#include "daemon/log/log.hpp"

namespace tidewright {

using mqtt::SafetyLine;

Loop::Loop(const Surroundings& around, Inbox& inbox)
    : around_(around), inbox_(inbox), decision_(around) {
  wait_for(around.line.handed_over(), Source::session);
  wait_for(beat_.number(), Source::beat);
  wait_for(deadline_.number(), Source::deadline);
  wait_for(glance_.number(), Source::glance);
  wait_for(inbox.descriptor(), Source::inbox);
  wait_for(around.store.descriptor(), Source::disk);
  wait_for(stop_signals_.number(), Source::stop_signal);
  beat_.set(SafetyLine::beat_every, SafetyLine::beat_every);
}

void Loop::wait_for(int descriptor, Source source) {
  waits_.add(descriptor, static_cast<std::uint32_t>(source));
}

void Loop::run() {
  decision_.start();
  around_.line.open();
  while (!stopping_) {
    deadline_.set(around_.clock.until(decision_.due()), {});
    if (decision_.has_news() && !glance_is_set_) {
      glance_.set(std::chrono::milliseconds{40}, {});
      glance_is_set_ = true;
    }
    if (const auto source = waits_.next()) ready(static_cast<Source>(*source));
  }
  stop();
}

void Loop::ready(Source source) {
  drain();  // what sensors have to say goes before everything else
  switch (source) {
    case Source::line:
      return;
    case Source::session:
      return adopt();
    case Source::beat:
      return beat();
    case Source::deadline:
      deadline_.taken();
      return decision_.happen(Tick{});
    case Source::glance:
      glance_.taken();
      glance_is_set_ = false;
      return decision_.glance();
    case Source::inbox:
      for (const Inbox::Request& request : inbox_.take()) {
        std::visit([this](const auto& what) { decision_.happen(what); }, request);
      }
      return;
    case Source::disk:
      return decision_.committed();
    case Source::stop_signal:
      stopping_ = true;
  }
}

void Loop::drain() {
  const bool was_up = around_.line.up();
  mqtt::Inbound message;
  while (around_.line.receive(message)) decision_.hear(message);
  while (const auto delivery = around_.line.delivered()) decision_.told(*delivery);
  if (was_up && !around_.line.up()) decision_.happen(Link{false});
}

void Loop::adopt() {
  switch (around_.line.adopt()) {
    case SafetyLine::News::none:
      return;
    case SafetyLine::News::standing_back:
      return around_.reporter.forbid();
    case SafetyLine::News::up:
      wait_for(around_.line.socket(), Source::line);
      around_.reporter.allow(around_.line.version());
      decision_.happen(Link{true});
      drain();
  }
}

void Loop::beat() {
  beat_.taken();
  const bool was_up = around_.line.up();
  around_.line.beat();
  if (was_up && !around_.line.up()) decision_.happen(Link{false});
  decision_.rest();
  log::tend();
}

void Loop::stop() {
  log::info("Stopping: everything goes OFF.");
  decision_.happen(Stopping{});
  const auto end = std::chrono::steady_clock::now() + std::chrono::milliseconds{400};
  while (around_.line.undelivered() > 0 && std::chrono::steady_clock::now() < end) {
    pollfd word{around_.line.socket(), POLLIN, 0};
    poll(&word, 1, 20);
    drain();
  }
  decision_.part();
}

}  // namespace tidewright
