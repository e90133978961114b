#include "daemon/mqtt/trust.hpp"

#include <fmt/format.h>
#include <openssl/err.h>
#include <openssl/ssl.h>
#include <openssl/x509.h>

#include <fstream>
#include <memory>

namespace tidewright::mqtt {
namespace {

using Context = std::unique_ptr<SSL_CTX, decltype(&SSL_CTX_free)>;

bool readable(const std::string& path) { return std::ifstream(path).get() != EOF; }

std::string unreadable(std::string_view key, const std::string& path) {
  return fmt::format(
      "`{}` names {}, which cannot be read: is the path right, and may this user "
      "read it?",
      key, path);
}

// A daemon has nobody whom it could ask for the password of a key.
int no_password(char*, int, int, void*) { return 0; }

constexpr const char* wants_certificate =
    "the broker seems to want a certificate of ours: give certificate_file and key_file.";

// By the alert's number (RFC 8446, section 6.2).
std::string alert_words(int alert) {
  switch (alert) {
    case SSL3_AD_HANDSHAKE_FAILURE:
    case TLS13_AD_CERTIFICATE_REQUIRED:
      return wants_certificate;
    case SSL3_AD_CERTIFICATE_EXPIRED:
      return "the broker says that our certificate has expired: certificate_file needs a new one.";
    case TLS1_AD_UNKNOWN_CA:
      return "the broker does not know who signed our certificate: certificate_file must be signed "
             "by the authority that the broker trusts.";
    case SSL3_AD_BAD_CERTIFICATE:
    case SSL3_AD_UNSUPPORTED_CERTIFICATE:
    case SSL3_AD_CERTIFICATE_REVOKED:
    case SSL3_AD_CERTIFICATE_UNKNOWN:
      return "the broker does not accept our certificate: look at certificate_file.";
    case TLS1_AD_PROTOCOL_VERSION:
      return "the broker speaks only versions of TLS that are too old for us.";
    default:
      return fmt::format("the broker refused the encrypted line (TLS alert {}).", alert);
  }
}

std::string verify_words(long result, const std::string& host) {
  switch (result) {
    case X509_V_ERR_CERT_HAS_EXPIRED:
      return "the broker's certificate has expired: give the broker a new one. Or is this "
             "machine's clock wrong?";
    case X509_V_ERR_CERT_NOT_YET_VALID:
      return "the broker's certificate is not valid yet: is this machine's clock right?";
    case X509_V_ERR_DEPTH_ZERO_SELF_SIGNED_CERT:
      return "the broker's certificate is signed by nobody but itself: if it is really your "
             "broker's, name a copy of it in ca_file.";
    case X509_V_ERR_SELF_SIGNED_CERT_IN_CHAIN:
    case X509_V_ERR_UNABLE_TO_GET_ISSUER_CERT:
    case X509_V_ERR_UNABLE_TO_GET_ISSUER_CERT_LOCALLY:
    case X509_V_ERR_UNABLE_TO_VERIFY_LEAF_SIGNATURE:
    case X509_V_ERR_CERT_SIGNATURE_FAILURE:
      return "the broker's certificate is not signed by anybody we trust: ca_file must be the "
             "certificate of the authority that signed it.";
    case X509_V_ERR_HOSTNAME_MISMATCH:
    case X509_V_ERR_IP_ADDRESS_MISMATCH:
      return fmt::format(
          "the broker's certificate is not for \"{}\": write in `uri` the name that the "
          "certificate is for.",
          host);
    default:
      return fmt::format("the broker's certificate was refused ({}).",
                         X509_verify_cert_error_string(result));
  }
}

std::string unusable(const Access& access, SSL_CTX& context) {
  if (!access.ca_file.empty() && SSL_CTX_load_verify_file(&context, access.ca_file.c_str()) != 1) {
    return fmt::format("`ca_file` names {}, which holds no certificate in PEM form.",
                       access.ca_file);
  }
  if (access.certificate_file.empty()) return {};
  if (SSL_CTX_use_certificate_chain_file(&context, access.certificate_file.c_str()) != 1) {
    return fmt::format("`certificate_file` names {}, which holds no certificate in PEM form.",
                       access.certificate_file);
  }
  SSL_CTX_set_default_passwd_cb(&context, no_password);
  if (SSL_CTX_use_PrivateKey_file(&context, access.key_file.c_str(), SSL_FILETYPE_PEM) != 1) {
    return fmt::format(
        "`key_file` names {}, which is not the key of {}, or is locked by a password: it must be "
        "an open key in PEM form.",
        access.key_file, access.certificate_file);
  }
  return {};
}

}  // namespace

std::string files_trouble(const Access& access) {
  if (!access.tls) return {};
  if (!access.ca_file.empty() && !readable(access.ca_file)) {
    return unreadable("ca_file", access.ca_file);
  }
  if (!access.certificate_file.empty()) {
    if (!readable(access.certificate_file)) {
      return unreadable("certificate_file", access.certificate_file);
    }
    if (!readable(access.key_file)) return unreadable("key_file", access.key_file);
  }
  const Context context(SSL_CTX_new(TLS_client_method()), SSL_CTX_free);
  std::string trouble = context ? unusable(access, *context) : std::string{};
  ERR_clear_error();
  return trouble;
}

std::string tls_trouble(const Tapped& tapped, const Access& access) {
  if (tapped.verify_result != X509_V_OK) return verify_words(tapped.verify_result, access.host);
  if (tapped.alert > SSL3_AD_CLOSE_NOTIFY) return alert_words(tapped.alert);
  if (tapped.tls_begun && tapped.tls == nullptr && !tapped.peer_showed_certificate) {
    return "somebody answers there, but not on an encrypted line: is the port right? It often is "
           "8883.";
  }
  // In TLS 1.3 the broker judges our certificate when the line stands already, and its reason is
  // lost with the line if we are just writing (RFC 8446, section 4.4.2.4).
  if (tapped.tls_begun && tapped.tls == nullptr) {
    return access.certificate_file.empty()
               ? wants_certificate
               : "the broker lets go of the encrypted line as soon as it stands: look at "
                 "certificate_file, and at what the broker's own log says.";
  }
  return {};
}

}  // namespace tidewright::mqtt
