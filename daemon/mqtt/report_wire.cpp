#include "daemon/mqtt/report_wire.hpp"

#include <fmt/format.h>
#include <mqtt/async_client.h>

#include <mutex>
#include <set>
#include <string_view>
#include <utility>
#include <vector>

#include "daemon/mqtt/refusal.hpp"

namespace tidewright::mqtt {
namespace {

using Clock = ReportWire::Clock;

constexpr int window = 8;
constexpr std::size_t letters_max = 64;
constexpr std::uint32_t will_delay_seconds = 3;

::mqtt::connect_options options_for(const ReportSettings& settings, int version) {
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
  ::mqtt::will_options will(settings.presence.topic, settings.presence.lost, 1, true);
  if (version == 5) {
    will.set_properties({{::mqtt::property::WILL_DELAY_INTERVAL, will_delay_seconds}});
  }
  options.set_will(std::move(will));
  return options;
}

std::string first_topic(const ::mqtt::token& token) {
  const auto topics = token.get_topics();
  return topics && !topics->empty() ? (*topics)[0] : std::string{};
}

}  // namespace

// The library's threads call the handlers; everything they touch is behind `lock`. No handler
// waits, and none calls the library.
struct ReportWire::Library : ::mqtt::iaction_listener {
  Library(const ReportSettings& from, int version, std::function<void()> wake_up)
      : settings(from),
        wake(std::move(wake_up)),
        client(from.access.uri, from.client_id, ::mqtt::create_options(version)) {
    client.set_connection_lost_handler([this](const std::string&) { lost(); });
    client.set_message_callback(
        [this](const ::mqtt::const_message_ptr& message) { arrived(message); });
  }

  void on_success(const ::mqtt::token& token) override;
  void on_failure(const ::mqtt::token& token) override;
  void refused(std::string_view deed, const std::string& topic, int reason);
  void lost();
  void arrived(const ::mqtt::const_message_ptr& message);
  void born(const std::string& word);
  // Goes with every message: tells the answers of this connection from those of an older one.
  // The library hands it back and looks at nothing behind it.
  void* this_connection() const {
    return reinterpret_cast<void*>(connection);  // NOLINT(performance-no-int-to-ptr)
  }

  const ReportSettings& settings;
  const std::function<void()> wake;

  std::mutex lock;  // of the next five
  Seen seen;
  std::uintptr_t connection = 0;  // counts
  int unacknowledged = 0;
  std::vector<hub::Letter> letters;
  std::set<std::string> refusals_said;  // on this connection

  // What was waited for: the library's threads still touch a token after its waiter has gone on.
  std::vector<::mqtt::token_ptr> kept;
  ::mqtt::async_client client;  // last: it goes first, and its threads with it
};

ReportWire::ReportWire(const ReportSettings& settings, int version, std::function<void()> wake)
    : settings_(settings),
      version_(version),
      library_(std::make_unique<Library>(settings, version, std::move(wake))) {}

ReportWire::~ReportWire() = default;

void ReportWire::begin() {
  {
    const std::lock_guard guard(library_->lock);
    library_->seen.phase = Phase::connecting;
    library_->seen.heard = Clock::now();
    library_->unacknowledged = 0;
    library_->refusals_said.clear();
    ++library_->connection;
  }
  try {
    library_->client.connect(options_for(settings_, version_), library_->this_connection(),
                             *library_);
  } catch (const ::mqtt::exception&) {
    library_->lost();
  }
}

void ReportWire::drop() {
  {
    const std::lock_guard guard(library_->lock);
    library_->seen.phase = Phase::away;
    ++library_->connection;
  }
  try {
    library_->client.disconnect(0);
  } catch (const ::mqtt::exception&) {
    // Then it is gone already.
  }
}

ReportWire::Seen ReportWire::look() {
  const std::lock_guard guard(library_->lock);
  Seen& seen = library_->seen;
  seen.waiting = seen.phase == Phase::connecting || library_->unacknowledged > 0;
  Seen now = seen;
  seen.trouble.clear();
  seen.hub_born = false;
  if (seen.phase == Phase::fresh) seen.phase = Phase::connected;
  return now;
}

void ReportWire::subscribe_to_requests() {
  try {
    std::vector<std::string> filters = settings_.listens;
    if (!settings_.birth_topic.empty()) filters.push_back(settings_.birth_topic);
    for (const std::string& filter : filters) {
      library_->client.subscribe(filter, 1, library_->this_connection(), *library_);
    }
  } catch (const ::mqtt::exception&) {
    // The connection is lost again; `lost` says so.
  }
}

bool ReportWire::publish(const hub::Message& message, const std::string& correlation) {
  {
    const std::lock_guard guard(library_->lock);
    if (library_->unacknowledged >= window) return false;
    if (library_->unacknowledged++ == 0) library_->seen.heard = Clock::now();
  }
  ::mqtt::properties properties;
  if (!correlation.empty() && version_ == 5) {
    properties.add({::mqtt::property::CORRELATION_DATA, correlation});
  }
  try {
    library_->client.publish(::mqtt::message::create(message.topic, message.payload,
                                                     message.retained ? 1 : settings_.event_quality,
                                                     message.retained, properties),
                             library_->this_connection(), *library_);
    return true;
  } catch (const ::mqtt::exception&) {
    const std::lock_guard guard(library_->lock);
    --library_->unacknowledged;
    return false;
  }
}

std::optional<hub::Letter> ReportWire::letter() {
  const std::lock_guard guard(library_->lock);
  if (library_->letters.empty()) return std::nullopt;
  hub::Letter first = std::move(library_->letters.front());
  library_->letters.erase(library_->letters.begin());
  return first;
}

void ReportWire::say_goodbye(std::chrono::milliseconds longest) {
  try {
    const Presence& presence = settings_.presence;
    const auto said = library_->client.publish(presence.topic, presence.leave.data(),
                                               presence.leave.size(), 1, true);
    library_->kept.push_back(said);
    said->wait_for(longest);
    const auto left = library_->client.disconnect(0);
    library_->kept.push_back(left);
    left->wait_for(longest);
  } catch (const ::mqtt::exception&) {
    // Not connected: then the will has spoken, or nobody knows us.
  }
}

void ReportWire::Library::on_success(const ::mqtt::token& token) {
  {
    const std::lock_guard guard(lock);
    if (token.get_user_context() != this_connection()) return;
    seen.heard = Clock::now();
    if (token.get_type() == ::mqtt::token::Type::CONNECT) {
      seen.phase = Phase::fresh;
      seen.connected_at = seen.heard;
    } else if (token.get_type() == ::mqtt::token::Type::PUBLISH) {
      --unacknowledged;
    }
  }
  wake();
}

void ReportWire::Library::on_failure(const ::mqtt::token& token) {
  {
    const std::lock_guard guard(lock);
    if (token.get_user_context() != this_connection()) return;
    seen.heard = Clock::now();
    const int reason = token.get_reason_code();
    if (token.get_type() == ::mqtt::token::Type::CONNECT) {
      seen.phase = Phase::away;
    } else if (token.get_type() == ::mqtt::token::Type::PUBLISH) {
      --unacknowledged;
      if (reason >= refused_from) refused("write", first_topic(token), reason);
    } else if (reason >= refused_from) {
      refused("read", first_topic(token), reason);
    }
  }
  wake();
}

// Of all that is published, or asked for, the first refusal speaks for the rest; a hub's topics
// have rights of their own.
void ReportWire::Library::refused(std::string_view deed, const std::string& topic, int reason) {
  const bool ours = topic.starts_with(settings.root + "/");
  if (!refusals_said.insert(fmt::format("{} {}", deed, ours)).second) return;
  seen.trouble.push_back(ours ? refusal_of_ours(deed, topic, settings.root, reason)
                              : refusal_of_hub(deed, topic, reason));
}

void ReportWire::Library::lost() {
  {
    const std::lock_guard guard(lock);
    seen.phase = Phase::away;
  }
  wake();
}

void ReportWire::Library::arrived(const ::mqtt::const_message_ptr& message) {
  using ::mqtt::property;
  if (message->get_topic() == settings.birth_topic) return born(message->get_payload_str());
  hub::Letter letter;
  letter.topic = message->get_topic();
  letter.verb = letter.topic == settings.tell_topic ? hub::Verb::tell : hub::Verb::ask;
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

void ReportWire::Library::born(const std::string& word) {
  if (word != "online") return;
  {
    const std::lock_guard guard(lock);
    seen.hub_born = true;
  }
  wake();
}

}  // namespace tidewright::mqtt
