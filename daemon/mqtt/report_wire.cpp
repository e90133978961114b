#include "daemon/mqtt/report_wire.hpp"

#include <fmt/format.h>

#include <utility>

namespace tidewright::mqtt {
namespace {

using Clock = ReportLine::Clock;

constexpr std::size_t letters_max = 64;
constexpr std::uint32_t will_delay_seconds = 3;

::mqtt::connect_options options_for(const ReportSettings& settings, int version,
                                    const std::string& online_topic) {
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

}  // namespace

ReportWire::ReportWire(const ReportSettings& settings, int mqtt_version,
                       std::function<void()> wake_up)
    : base(settings.place.base),
      online_topic(base + "/online"),
      ask_topic(settings.place.topic("ask")),
      tell_topic(settings.place.topic("tell")),
      wake(std::move(wake_up)),
      version(mqtt_version),
      client(settings.access.uri, base + "-report", ::mqtt::create_options(mqtt_version)) {
  client.set_connection_lost_handler([this](const std::string&) { lost(); });
  client.set_message_callback(
      [this](const ::mqtt::const_message_ptr& message) { arrived(message); });
}

void ReportWire::begin(const ReportSettings& settings) {
  {
    const std::lock_guard guard(lock);
    phase = Phase::connecting;
    heard = Clock::now();
    unacknowledged = 0;
    ++connection;
  }
  try {
    client.connect(options_for(settings, version, online_topic), this_connection(), *this);
  } catch (const ::mqtt::exception&) {
    const std::lock_guard guard(lock);
    phase = Phase::away;
  }
}

void ReportWire::drop() {
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

void ReportWire::on_success(const ::mqtt::token& token) {
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

void ReportWire::on_failure(const ::mqtt::token& token) {
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

void ReportWire::lost() {
  {
    const std::lock_guard guard(lock);
    phase = Phase::away;
  }
  wake();
}

void ReportWire::arrived(const ::mqtt::const_message_ptr& message) {
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

}  // namespace tidewright::mqtt
