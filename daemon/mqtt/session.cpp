#include "daemon/mqtt/session.hpp"

#include <MQTTClient.h>
#include <fmt/format.h>
#include <openssl/ssl.h>

#include <algorithm>
#include <cstring>

#include "daemon/mqtt/trust.hpp"

// In the library's static archive, but in none of its headers: tells it that a TLS session holds
// bytes that its socket no longer shows.
extern "C" void SSLSocket_addPendingRead(int socket);

namespace tidewright::mqtt {
namespace {

// Refusals of a CONNECT: MQTT 3.1.1 table 3.1 (1 to 5), MQTT 5 section 3.2.2.2 (128 and up).
constexpr int refused_version_3 = 1;

std::string connect_failure(int code, const Access& access, const Tapped& tapped) {
  switch (code) {
    case 2:
    case MQTTREASONCODE_CLIENT_IDENTIFIER_NOT_VALID:
      return "the broker does not like our client id.";
    case 3:
    case MQTTREASONCODE_SERVER_UNAVAILABLE:
    case MQTTREASONCODE_SERVER_BUSY:
      return "the broker is busy.";
    case 4:
    case MQTTREASONCODE_BAD_USER_NAME_OR_PASSWORD:
      return "the broker does not accept our user name and password: look at username and "
             "password_file.";
    case 5:
    case MQTTREASONCODE_NOT_AUTHORIZED:
      return "the broker does not let us in: it wants a user name and password, or other ones; "
             "look at username and password_file.";
    default:
      break;
  }
  if (code >= 128) return fmt::format("the broker refused the connection (reason {}).", code);
  for (std::string trouble : {tls_trouble(tapped, access), files_trouble(access)}) {
    if (!trouble.empty()) return trouble;
  }
  return "nobody answers there. Is the broker running, and is its address right?";
}

void acknowledged(void* context, int token, int, MQTTProperties*, MQTTReasonCodes code) {
  static_cast<std::vector<Acknowledgement>*>(context)->push_back(
      {token, static_cast<std::uint8_t>(code)});
}

const char* text_or_null(const std::string& text) { return text.empty() ? nullptr : text.c_str(); }

// The library's answer, freed when it goes.
class Response {
 public:
  explicit Response(MQTTResponse response) : response_(response) {}
  ~Response() { MQTTResponse_free(response_); }
  Response(const Response&) = delete;
  Response& operator=(const Response&) = delete;
  // The library puts errors of its own here, too, which are below 0 and no values of its enum.
  int code() const {
    int code = 0;
    static_assert(sizeof code == sizeof response_.reasonCode);
    std::memcpy(&code, &response_.reasonCode, sizeof code);
    return code;
  }
  int receive_maximum(int otherwise) const {
    if (response_.properties == nullptr ||
        MQTTProperties_hasProperty(response_.properties, MQTTPROPERTY_CODE_RECEIVE_MAXIMUM) == 0) {
      return otherwise;
    }
    return static_cast<int>(
        MQTTProperties_getNumericValue(response_.properties, MQTTPROPERTY_CODE_RECEIVE_MAXIMUM));
  }

 private:
  MQTTResponse response_;
};

}  // namespace

Inbound::~Inbound() { release(); }

void Inbound::release() {
  if (name_ != nullptr) MQTTClient_free(name_);
  if (message_ != nullptr) {
    auto* message = static_cast<MQTTClient_message*>(message_);
    MQTTClient_freeMessage(&message);
  }
  name_ = nullptr;
  message_ = nullptr;
}

Session::Opened Session::open(const Access& access, const std::string& client_id, int version) {
  std::unique_ptr<Session> session(new Session(version));
  const Tap tap(session->tapped_, access.host);
  const int code = session->connect(access, client_id);
  if (code == MQTTCLIENT_SUCCESS) return {std::move(session), {}, false};
  const bool other_version =
      code == refused_version_3 || code == MQTTREASONCODE_UNSUPPORTED_PROTOCOL_VERSION;
  return {nullptr, connect_failure(code, access, session->tapped_), other_version};
}

int Session::connect(const Access& access, const std::string& client_id) {
  MQTTClient_createOptions creation = MQTTClient_createOptions_initializer;
  creation.MQTTVersion = version_;
  const int created = MQTTClient_createWithOptions(&handle_, access.uri.c_str(), client_id.c_str(),
                                                   MQTTCLIENT_PERSISTENCE_NONE, nullptr, &creation);
  if (created != MQTTCLIENT_SUCCESS) return created;
  MQTTClient_setTraceLevel(MQTTCLIENT_TRACE_ERROR);
  MQTTClient_setPublished(handle_, &acknowledgements_, acknowledged);

  MQTTClient_connectOptions options = MQTTClient_connectOptions_initializer;
  if (version_ == MQTTVERSION_5) options = MQTTClient_connectOptions_initializer5;
  options.MQTTVersion = version_;
  options.keepAliveInterval = 5;
  options.connectTimeout = 2;
  options.reliable = 0;
  options.maxInflightMessages = window_;
  options.username = text_or_null(access.username);
  options.password = text_or_null(access.password);
  MQTTClient_SSLOptions tls = MQTTClient_SSLOptions_initializer;
  tls.verify = 1;
  tls.trustStore = text_or_null(access.ca_file);
  tls.keyStore = text_or_null(access.certificate_file);
  tls.privateKey = text_or_null(access.key_file);
  if (access.tls) options.ssl = &tls;

  if (version_ != MQTTVERSION_5) return MQTTClient_connect(handle_, &options);
  const Response answer(MQTTClient_connect5(handle_, &options, nullptr, nullptr));
  window_ = std::min(window_, answer.receive_maximum(window_));
  return answer.code();
}

Session::~Session() {
  if (handle_ == nullptr) return;
  MQTTClient_disconnect(handle_, 0);
  MQTTClient_destroy(&handle_);
}

int Session::subscribe(const std::string& topic, int qos, bool own_too) {
  MQTTSubscribe_options options = MQTTSubscribe_options_initializer;
  options.noLocal = own_too ? 0 : 1;
  const bool five = version_ == MQTTVERSION_5;
  const Response answer(
      MQTTClient_subscribe5(handle_, topic.c_str(), qos, five ? &options : nullptr, nullptr));
  return answer.code();
}

bool Session::alive() const { return MQTTClient_isConnected(handle_) != 0; }

bool Session::receive(Inbound& into) {
  into.release();
  while (true) {
    int name_length = 0;
    MQTTClient_message* message = nullptr;
    // A time-out of 0 looks without waiting; from 100 ms on the library may sleep.
    const int code = MQTTClient_receive(handle_, &into.name_, &name_length, &message, 0);
    into.message_ = message;
    if (message != nullptr) {
      into.topic_ = {into.name_, name_length > 0 ? static_cast<std::size_t>(name_length)
                                                 : std::string_view(into.name_).size()};
      into.payload_ = {static_cast<const char*>(message->payload),
                       static_cast<std::size_t>(message->payloadlen)};
      into.retained_ = message->retained != 0;
      return true;
    }
    if (code != MQTTCLIENT_SUCCESS || !alive()) return false;
    // A message may have come in one TLS record with the acknowledgement just handled; the socket
    // will not become readable for it.
    if (tapped_.tls == nullptr || SSL_pending(tapped_.tls) == 0) return false;
    SSLSocket_addPendingRead(tapped_.socket);
  }
}

std::optional<int> Session::publish(const std::string& topic, std::string_view payload, int qos,
                                    std::uint32_t expiry_seconds) {
  MQTTProperties properties = MQTTProperties_initializer;
  if (expiry_seconds > 0 && version_ == MQTTVERSION_5) {
    MQTTProperty expiry{};
    expiry.identifier = MQTTPROPERTY_CODE_MESSAGE_EXPIRY_INTERVAL;
    expiry.value.integer4 = expiry_seconds;
    MQTTProperties_add(&properties, &expiry);
  }
  int token = 0;
  const Response answer(MQTTClient_publish5(handle_, topic.c_str(),
                                            static_cast<int>(payload.size()), payload.data(), qos,
                                            0, &properties, &token));
  MQTTProperties_free(&properties);
  // Of a connection that breaks in the act the library says success.
  if (answer.code() != MQTTCLIENT_SUCCESS || !alive()) return std::nullopt;
  return token;
}

}  // namespace tidewright::mqtt
