#include "daemon/mqtt/report_line.hpp"

#include <fmt/format.h>
#include <mqtt/async_client.h>

#include <algorithm>
#include <mutex>
#include <random>
#include <utility>

#include "daemon/log/log.hpp"
#include "daemon/mqtt/back_off.hpp"

namespace tidewright::mqtt {
namespace {

// With more unacknowledged, the library sends no faster than twenty a second.
constexpr int window = 8;
constexpr std::size_t once_max = 64;
constexpr std::size_t letters_max = 64;
// A connection on which an answer is missing for so long is given up.
constexpr std::chrono::seconds patience{5};
constexpr std::uint32_t will_delay_seconds = 3;

enum class Phase { away, connecting, fresh, connected };

using Clock = ReportLine::Clock;

}  // namespace

// The library's threads call the handlers; everything they touch is behind `lock`.
// No handler waits, and none calls the library.
struct ReportLine::Wire : ::mqtt::iaction_listener {
  Wire(const ReportSettings& settings, int mqtt_version, std::function<void()> wake_up);

  void on_success(const ::mqtt::token& token) override;
  void on_failure(const ::mqtt::token& token) override;
  void lost();
  void arrived(const ::mqtt::const_message_ptr& message);
  ::mqtt::connect_options options(const ReportSettings& settings) const;
  void* this_connection() const { return reinterpret_cast<void*>(connection); }
  void begin(const ReportSettings& settings);
  void drop();

  const std::string base;
  const std::string online_topic;
  const std::string ask_topic;
  const std::string tell_topic;
  const std::function<void()> wake;
  ::mqtt::async_client client;

  const int version;

  std::mutex lock;  // of what follows
  Phase phase = Phase::away;
  std::uintptr_t connection = 0;  // counts; what is said of an older one is not listened to
  int unacknowledged = 0;
  Clock::time_point heard{};  // last sign of life, or begin of the phase
  Clock::time_point connected_at{};
  std::vector<hub::Letter> letters;
  std::string trouble;  // for the log
};

ReportLine::Wire::Wire(const ReportSettings& settings, int mqtt_version,
                       std::function<void()> wake_up)
    : base(settings.place.base),
      online_topic(base + "/online"),
      ask_topic(settings.place.topic("ask")),
      tell_topic(settings.place.topic("tell")),
      wake(std::move(wake_up)),
      client(settings.access.uri, base + "-report", ::mqtt::create_options(mqtt_version)),
      version(mqtt_version) {
  client.set_connection_lost_handler([this](const std::string&) { lost(); });
  client.set_message_callback(
      [this](const ::mqtt::const_message_ptr& message) { arrived(message); });
}

::mqtt::connect_options ReportLine::Wire::options(const ReportSettings& settings) const {
  ::mqtt::connect_options options;
  options.set_mqtt_version(version);
  if (version == 5) {
    options.set_clean_start(true);
  } else {
    options.set_clean_session(true);
  }
  options.set_keep_alive_interval(10);
  options.set_connect_timeout(2);
  options.set_automatic_reconnect(false);
  options.set_max_inflight(window);
  if (!settings.access.username.empty()) options.set_user_name(settings.access.username);
  if (!settings.access.password.empty()) options.set_password(settings.access.password);
  if (settings.access.tls) {
    ::mqtt::ssl_options tls;
    tls.set_verify(true);
    if (!settings.access.ca_file.empty()) tls.set_trust_store(settings.access.ca_file);
    if (!settings.access.certificate_file.empty()) {
      tls.set_key_store(settings.access.certificate_file);
      tls.set_private_key(settings.access.key_file);
    }
    options.set_ssl(tls);
  }
  ::mqtt::will_options will(online_topic, std::string("offline"), 1, true);
  if (version == 5) {
    will.set_properties({{::mqtt::property::WILL_DELAY_INTERVAL, will_delay_seconds}});
  }
  options.set_will(std::move(will));
  return options;
}

void ReportLine::Wire::begin(const ReportSettings& settings) {
  {
    const std::lock_guard guard(lock);
    phase = Phase::connecting;
    heard = Clock::now();
    unacknowledged = 0;
    ++connection;
  }
  try {
    client.connect(options(settings), this_connection(), *this);
  } catch (const ::mqtt::exception&) {
    const std::lock_guard guard(lock);
    phase = Phase::away;
  }
}

void ReportLine::Wire::drop() {
  {
    const std::lock_guard guard(lock);
    phase = Phase::away;
    ++connection;
  }
  try {
    client.disconnect(0);
  } catch (const ::mqtt::exception&) {
    // Then it is gone already.
  }
}

void ReportLine::Wire::on_success(const ::mqtt::token& token) {
  {
    const std::lock_guard guard(lock);
    if (token.get_user_context() != this_connection()) return;
    heard = Clock::now();
    if (token.get_type() == ::mqtt::token::Type::CONNECT) {
      phase = Phase::fresh;
      connected_at = heard;
    } else if (token.get_type() == ::mqtt::token::Type::PUBLISH) {
      --unacknowledged;
    }
  }
  wake();
}

void ReportLine::Wire::on_failure(const ::mqtt::token& token) {
  {
    const std::lock_guard guard(lock);
    if (token.get_user_context() != this_connection()) return;
    heard = Clock::now();
    const int reason = token.get_reason_code();
    if (token.get_type() == ::mqtt::token::Type::CONNECT) {
      phase = Phase::away;
    } else if (token.get_type() == ::mqtt::token::Type::PUBLISH) {
      --unacknowledged;
      trouble = fmt::format("The broker does not take what we publish (reason {}).", reason);
    } else {
      trouble = fmt::format("The broker does not let us read requests (reason {}).", reason);
    }
  }
  wake();
}

void ReportLine::Wire::lost() {
  {
    const std::lock_guard guard(lock);
    phase = Phase::away;
  }
  wake();
}

void ReportLine::Wire::arrived(const ::mqtt::const_message_ptr& message) {
  using ::mqtt::property;
  hub::Letter letter;
  letter.verb = message->get_topic() == tell_topic ? hub::Verb::tell : hub::Verb::ask;
  letter.payload = message->get_payload_str().substr(0, hub::request_bytes_max + 1);
  letter.retained = message->is_retained();
  const ::mqtt::properties& properties = message->get_properties();
  if (properties.contains(property::RESPONSE_TOPIC)) {
    letter.response_topic = ::mqtt::get<std::string>(properties, property::RESPONSE_TOPIC);
  }
  if (properties.contains(property::CORRELATION_DATA)) {
    letter.correlation = ::mqtt::get<std::string>(properties, property::CORRELATION_DATA);
  }
  {
    const std::lock_guard guard(lock);
    if (letters.size() < letters_max) letters.push_back(std::move(letter));
  }
  wake();
}

ReportLine::ReportLine(ReportSettings settings, std::function<void()> wake)
    : settings_(std::move(settings)), wake_(std::move(wake)), back_off_(std::random_device{}()) {}

ReportLine::~ReportLine() = default;

void ReportLine::allow(int mqtt_version) {
  if (wire_ && wire_->version == mqtt_version) return;
  wire_ = std::make_unique<Wire>(settings_, mqtt_version, wake_);
  next_try_ = Clock::now();
}

void ReportLine::forbid() { wire_.reset(); }

void ReportLine::show(std::vector<hub::Message> all) {
  for (hub::Message& change : hub::changes(shown_, all)) {
    const auto same = std::find_if(due_.begin(), due_.end(), [&](const hub::Message& message) {
      return message.topic == change.topic;
    });
    if (same == due_.end()) {
      due_.push_back(std::move(change));
    } else {
      *same = std::move(change);
    }
  }
  shown_ = std::move(all);
}

void ReportLine::send(hub::Message message, std::string correlation) {
  if (once_.size() == once_max) {
    log::warning("The broker has been away for long: the oldest message is dropped.");
    once_.erase(once_.begin());
  }
  once_.push_back({std::move(message), std::move(correlation)});
}

Clock::time_point ReportLine::tend() {
  const auto now = Clock::now();
  if (!wire_) return now + patience;
  std::unique_lock guard(wire_->lock);
  const Phase phase = wire_->phase;
  if (phase == Phase::fresh) wire_->phase = Phase::connected;
  const bool waits = phase == Phase::connecting || wire_->unacknowledged > 0;
  const bool hangs = waits && now - wire_->heard > patience;
  const std::string trouble = std::exchange(wire_->trouble, {});
  guard.unlock();

  if (!trouble.empty()) log::error(trouble);
  if (hangs) {
    wire_->drop();
  } else if (phase == Phase::away) {
    try_to_connect(now);
  } else if (phase != Phase::connecting) {
    if (phase == Phase::fresh) greet();
    publish_what_is_due();
  }
  return phase == Phase::away ? next_try_ : now + patience;
}

// The first call after a loss only sets the time of the next try.
void ReportLine::try_to_connect(Clock::time_point now) {
  if (next_try_ == Clock::time_point{}) {
    const auto lasted = wire_->connected_at == Clock::time_point{}
                            ? Clock::duration{0}
                            : now - std::exchange(wire_->connected_at, {});
    next_try_ = now + back_off_.wait(std::chrono::duration_cast<Milliseconds>(lasted));
  } else if (now >= next_try_) {
    next_try_ = {};
    wire_->begin(settings_);
  }
}

// The broker may have forgotten everything: requests are subscribed to and all is published anew.
void ReportLine::greet() {
  try {
    wire_->client.subscribe(wire_->ask_topic, 1, wire_->this_connection(), *wire_);
    wire_->client.subscribe(wire_->tell_topic, 1, wire_->this_connection(), *wire_);
  } catch (const ::mqtt::exception&) {
    // The connection is lost again; `lost` says so.
  }
  due_.assign(1, {wire_->online_topic, "online"});
  due_.insert(due_.end(), shown_.begin(), shown_.end());
}

void ReportLine::publish_what_is_due() {
  std::size_t once_gone = 0;
  while (once_gone < once_.size() &&
         publish(once_[once_gone].message, once_[once_gone].correlation)) {
    ++once_gone;
  }
  once_.erase(once_.begin(), once_.begin() + static_cast<std::ptrdiff_t>(once_gone));
  std::size_t gone = 0;
  while (gone < due_.size() && publish(due_[gone], {})) ++gone;
  due_.erase(due_.begin(), due_.begin() + static_cast<std::ptrdiff_t>(gone));
}

// False if the window is full or the connection is lost.
bool ReportLine::publish(const hub::Message& message, const std::string& correlation) {
  {
    const std::lock_guard guard(wire_->lock);
    if (wire_->unacknowledged >= window) return false;
    if (wire_->unacknowledged++ == 0) wire_->heard = Clock::now();
  }
  ::mqtt::properties properties;
  if (!correlation.empty() && wire_->version == 5) {
    properties.add({::mqtt::property::CORRELATION_DATA, correlation});
  }
  try {
    wire_->client.publish(
        ::mqtt::message::create(message.topic, message.payload, 1, message.retained, properties),
        wire_->this_connection(), *wire_);
    return true;
  } catch (const ::mqtt::exception&) {
    const std::lock_guard guard(wire_->lock);
    --wire_->unacknowledged;
    return false;
  }
}

std::optional<hub::Letter> ReportLine::letter() {
  if (!wire_) return std::nullopt;
  const std::lock_guard guard(wire_->lock);
  if (wire_->letters.empty()) return std::nullopt;
  hub::Letter first = std::move(wire_->letters.front());
  wire_->letters.erase(wire_->letters.begin());
  return first;
}

void ReportLine::close(Milliseconds longest) {
  if (!wire_) return;
  try {
    wire_->client.publish(wire_->online_topic, "offline", 7, 1, true)->wait_for(longest);
    wire_->client.disconnect(0)->wait_for(longest);
  } catch (const ::mqtt::exception&) {
    // Not connected: then the will has spoken, or nobody knows us.
  }
  wire_.reset();
}

}  // namespace tidewright::mqtt
