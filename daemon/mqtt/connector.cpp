#include "daemon/mqtt/connector.hpp"

#include <fmt/format.h>
#include <sys/eventfd.h>
#include <unistd.h>

#include <condition_variable>
#include <mutex>
#include <random>
#include <thread>
#include <utility>

#include "daemon/log/log.hpp"
#include "daemon/mqtt/back_off.hpp"
#include "daemon/mqtt/refusal.hpp"

namespace tidewright::mqtt {
namespace {

using Clock = std::chrono::steady_clock;

constexpr Milliseconds look_shortest{1'000};  // four heartbeats
constexpr Milliseconds look_further_max{500};
constexpr Milliseconds look_every{20};
constexpr Milliseconds gone_after{10'000};
constexpr Milliseconds end_patience{300};

}  // namespace

std::string beat_prefix(const SafetySettings& settings) {
  return fmt::format("{} {} ", settings.base, settings.instance);
}

// Lives as long as the helper thread or the connector, whichever is longer.
struct Connector::Shared {
  explicit Shared(SafetySettings wanted)
      : settings(std::move(wanted)),
        wake(eventfd(0, EFD_CLOEXEC | EFD_NONBLOCK)),
        chance(std::random_device{}()),
        back_off(static_cast<std::uint32_t>(chance())) {}
  ~Shared() { close(wake); }

  void connect_until_up(Milliseconds wait, bool look_first);
  bool pause(Milliseconds wait);
  enum class Heard { nobody, another, no_broker };
  Heard look(bool standing_back);
  std::string other_instance(const Inbound& message) const;
  std::unique_ptr<Session> open(const std::string& client_id);
  bool subscribe(Session& session);
  void hand_over(Taken taken);

  const SafetySettings settings;
  const int wake;
  std::minstd_rand chance;
  BackOff back_off;
  int mqtt_version = 5;

  std::mutex lock;  // of what follows
  std::condition_variable changed;
  bool ending = false;
  bool running = false;
  Taken ready;
};

Connector::Connector(SafetySettings settings)
    : shared_(std::make_shared<Shared>(std::move(settings))) {}

Connector::~Connector() { end(); }

void Connector::start(Milliseconds wait, bool look_first) {
  {
    const std::lock_guard guard(shared_->lock);
    shared_->running = true;
  }
  std::thread([shared = shared_, wait, look_first] {
    shared->connect_until_up(wait, look_first);
    const std::lock_guard guard(shared->lock);
    shared->running = false;
    shared->changed.notify_all();
  }).detach();
}

int Connector::descriptor() const { return shared_->wake; }

Connector::Taken Connector::take() {
  std::uint64_t count = 0;
  if (read(shared_->wake, &count, sizeof count) < 0) return {};
  const std::lock_guard guard(shared_->lock);
  return std::exchange(shared_->ready, {});
}

bool Connector::end() {
  std::unique_lock guard(shared_->lock);
  shared_->ending = true;
  shared_->changed.notify_all();
  const bool ended =
      shared_->changed.wait_for(guard, end_patience, [this] { return !shared_->running; });
  shared_->ready = {};
  return ended;
}

void Connector::Shared::connect_until_up(Milliseconds wait, bool look_first) {
  bool standing_back = false;
  while (pause(wait)) {
    wait = back_off.wait(Milliseconds{0});
    const Heard heard = look_first ? look(standing_back) : Heard::nobody;
    if (heard == Heard::no_broker) continue;
    if (heard == Heard::another) {
      if (!standing_back) hand_over({nullptr, true});
      standing_back = true;
      wait = BackOff::longest;
      continue;
    }
    if (standing_back) log::info("The other tidewright is silent; this one goes to work.");
    standing_back = false;
    std::unique_ptr<Session> session = open(settings.base + "-safety");
    if (session && subscribe(*session)) return hand_over({std::move(session), false});
  }
}

// False when the daemon is ending.
bool Connector::Shared::pause(Milliseconds wait) {
  std::unique_lock guard(lock);
  return !changed.wait_for(guard, wait, [this] { return ending; });
}

// Listens, under a client id of its own, for the heartbeat of another daemon with our name.
Connector::Shared::Heard Connector::Shared::look(bool standing_back) {
  const auto session = open(fmt::format("{}-look-{:08x}", settings.base, chance()));
  if (!session) return Heard::no_broker;
  const int code = session->subscribe(settings.heartbeat, 0, true);
  if (code >= refused_from) return Heard::nobody;  // not allowed to listen; subscribe() will say so
  std::uniform_int_distribution<Milliseconds::rep> further(0, look_further_max.count());
  const Milliseconds longest =
      standing_back ? gone_after : look_shortest + Milliseconds{further(chance)};
  Inbound message;
  for (const auto end = Clock::now() + longest; Clock::now() < end && pause(look_every);) {
    while (session->receive(message)) {
      const std::string other = other_instance(message);
      if (other.empty()) continue;
      log::warning(fmt::format(
          "Another tidewright ({}) already works under the name \"{}\" at this broker. This one "
          "stands back: it commands nothing and waits until the other is gone. Give one of them "
          "another `base` if both are meant to run.",
          other, settings.base));
      return Heard::another;
    }
    if (!session->alive()) return Heard::no_broker;
  }
  return Heard::nobody;
}

// Whose heartbeat that is; empty if it is not one of another daemon with our name.
std::string Connector::Shared::other_instance(const Inbound& message) const {
  const std::string_view beat = message.payload();
  if (message.retained() || !beat.starts_with(settings.base + " ")) return {};
  if (beat.starts_with(beat_prefix(settings))) return {};
  const std::string_view rest = beat.substr(settings.base.size() + 1);
  return std::string(rest.substr(0, rest.find(' ')));
}

std::unique_ptr<Session> Connector::Shared::open(const std::string& client_id) {
  Session::Opened opened = Session::open(settings.access, client_id, mqtt_version);
  if (opened.version_refused && mqtt_version == 5) {
    log::info("The broker does not speak MQTT 5; going on with MQTT 3.1.1.");
    mqtt_version = 4;
    opened = Session::open(settings.access, client_id, mqtt_version);
  }
  if (!opened.session) {
    log::warning(fmt::format("The broker at {} cannot be reached: {} Trying again.",
                             settings.access.address, opened.trouble));
  }
  return std::move(opened.session);
}

bool Connector::Shared::subscribe(Session& session) {
  std::vector<std::string> topics = settings.topics;
  topics.push_back(settings.heartbeat);
  for (const std::string& topic : topics) {
    const bool own = topic == settings.heartbeat;
    const int code = session.subscribe(topic, own ? 0 : 1, own);
    if (code < 0) return false;
    if (code >= refused_from) {
      log::error(fmt::format(
          "The broker does not let us read {} ({}): allow reading it in the broker's access list.",
          topic, refusal_words(code)));
    }
  }
  return true;
}

void Connector::Shared::hand_over(Taken taken) {
  const std::lock_guard guard(lock);
  if (ending) return;
  ready = std::move(taken);
  const std::uint64_t one = 1;
  [[maybe_unused]] const ssize_t written = write(wake, &one, sizeof one);
}

}  // namespace tidewright::mqtt
