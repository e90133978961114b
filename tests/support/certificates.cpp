#include "tests/support/certificates.hpp"

#include <openssl/evp.h>
#include <openssl/pem.h>
#include <openssl/x509v3.h>

#include <memory>
#include <stdexcept>
#include <utility>

namespace tidewright::support {
namespace {

struct Free {
  void operator()(EVP_PKEY* key) const { EVP_PKEY_free(key); }
  void operator()(X509* certificate) const { X509_free(certificate); }
  void operator()(X509_EXTENSION* extension) const { X509_EXTENSION_free(extension); }
  void operator()(std::FILE* file) const { std::fclose(file); }
};
using Key = std::unique_ptr<EVP_PKEY, Free>;
using Certificate = std::unique_ptr<X509, Free>;
using File = std::unique_ptr<std::FILE, Free>;

constexpr long day_seconds = 86'400;

void must(bool done) {
  if (!done) throw std::runtime_error("OpenSSL cannot make a certificate");
}

File open(const std::string& path, const char* mode) {
  File file(std::fopen(path.c_str(), mode));
  must(file != nullptr);
  return file;
}

void extend(X509* certificate, int what, const std::string& value) {
  const std::unique_ptr<X509_EXTENSION, Free> extension(
      X509V3_EXT_conf_nid(nullptr, nullptr, what, value.c_str()));
  must(extension != nullptr && X509_add_ext(certificate, extension.get(), -1) == 1);
}

void name(X509_NAME* into, const std::string& text) {
  const auto* bytes = reinterpret_cast<const unsigned char*>(text.c_str());
  must(X509_NAME_add_entry_by_txt(into, "CN", MBSTRING_UTF8, bytes, -1, -1, 0) == 1);
}

// `issuer` and its key sign; without them the certificate signs itself.
Certified make(const std::string& directory, const Wish& wish, bool authority,
               const Certified* signer) {
  Certified made{directory + "/" + wish.file + ".pem", directory + "/" + wish.file + ".key"};
  const Key key(EVP_EC_gen("P-256"));
  const Certificate certificate(X509_new());
  must(key != nullptr && certificate != nullptr);
  X509_set_version(certificate.get(), X509_VERSION_3);
  static long serial = 0;
  ASN1_INTEGER_set(X509_get_serialNumber(certificate.get()), ++serial);
  const long begin = wish.expired ? -2 * day_seconds : -day_seconds;
  X509_gmtime_adj(X509_getm_notBefore(certificate.get()), begin);
  X509_gmtime_adj(X509_getm_notAfter(certificate.get()),
                  wish.expired ? -day_seconds : 30 * day_seconds);
  X509_set_pubkey(certificate.get(), key.get());
  name(X509_get_subject_name(certificate.get()), wish.file);
  if (authority) extend(certificate.get(), NID_basic_constraints, "critical,CA:TRUE");
  if (!wish.names.empty()) extend(certificate.get(), NID_subject_alt_name, wish.names);

  if (signer != nullptr) {
    const Certificate issuer(
        PEM_read_X509(open(signer->certificate_file, "r").get(), nullptr, nullptr, nullptr));
    const Key issuer_key(
        PEM_read_PrivateKey(open(signer->key_file, "r").get(), nullptr, nullptr, nullptr));
    X509_set_issuer_name(certificate.get(), X509_get_subject_name(issuer.get()));
    must(X509_sign(certificate.get(), issuer_key.get(), EVP_sha256()) > 0);
  } else {
    X509_set_issuer_name(certificate.get(), X509_get_subject_name(certificate.get()));
    must(X509_sign(certificate.get(), key.get(), EVP_sha256()) > 0);
  }
  must(PEM_write_X509(open(made.certificate_file, "w").get(), certificate.get()) == 1);
  must(PEM_write_PrivateKey(open(made.key_file, "w").get(), key.get(), nullptr, nullptr, 0, nullptr,
                            nullptr) == 1);
  return made;
}

}  // namespace

Authority::Authority(std::string directory, const std::string& name)
    : directory_(std::move(directory)), own_(make(directory_, {name, ""}, true, nullptr)) {}

Certified Authority::sign(const Wish& wish) const { return make(directory_, wish, false, &own_); }

Certified self_signed(const std::string& directory, const Wish& wish) {
  return make(directory, wish, false, nullptr);
}

}  // namespace tidewright::support
