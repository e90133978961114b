#include "daemon/mqtt/tap.hpp"

#include <netinet/in.h>
#include <netinet/tcp.h>
#include <openssl/ssl.h>
#include <sys/socket.h>

#include <utility>

namespace {

thread_local tidewright::mqtt::Tapped* here = nullptr;
thread_local const char* expected_host = nullptr;

void heard(const SSL*, int where, int value) {
  if (here != nullptr && (where & SSL_CB_READ_ALERT) == SSL_CB_READ_ALERT) {
    here->alert = value & 0xff;  // the upper byte: fatal or not
  }
}

}  // namespace

namespace tidewright::mqtt {

Tap::Tap(Tapped& tapped, std::string host) : host_(std::move(host)) {
  here = &tapped;
  expected_host = host_.c_str();
}

Tap::~Tap() {
  here = nullptr;
  expected_host = nullptr;
}

}  // namespace tidewright::mqtt

// The names are the linker's: it sends calls of `connect` to __wrap_connect.
// NOLINTBEGIN(bugprone-reserved-identifier)
extern "C" {

int __real_connect(int fd, const sockaddr* address, socklen_t size);
int __real_SSL_set_fd(SSL* ssl, int fd);
void __real_SSL_free(SSL* ssl);

int __wrap_connect(int fd, const sockaddr* address, socklen_t size) {
  if (here != nullptr) {
    const int yes = 1;
    setsockopt(fd, IPPROTO_TCP, TCP_NODELAY, &yes, sizeof yes);
    here->socket = fd;
  }
  return __real_connect(fd, address, size);
}

int __wrap_SSL_set_fd(SSL* ssl, int fd) {
  if (here != nullptr) {
    here->tls = ssl;
    here->tls_begun = true;
    SSL_set_info_callback(ssl, heard);
    if (SSL_set1_host(ssl, expected_host) != 1) return 0;
  }
  return __real_SSL_set_fd(ssl, fd);
}

void __wrap_SSL_free(SSL* ssl) {
  if (here != nullptr && here->tls == ssl) {
    here->verify_result = SSL_get_verify_result(ssl);
    here->peer_showed_certificate = SSL_get0_peer_certificate(ssl) != nullptr;
    here->tls = nullptr;
  }
  __real_SSL_free(ssl);
}
}
// NOLINTEND(bugprone-reserved-identifier)
