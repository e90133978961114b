// What the synchronous Paho library keeps to itself: its socket and its TLS session.
// The program is linked with --wrap=connect, SSL_set_fd and SSL_free (daemon/CMakeLists.txt), so
// that the library's calls pass through tap.cpp. Everybody else's calls pass unchanged.
#pragma once

struct ssl_st;

namespace tidewright::mqtt {

struct Tapped {
  int socket = -1;
  ssl_st* tls = nullptr;
  long verify_result = 0;  // OpenSSL's, of a session that was given up
};

// While one lives, what its own thread connects is seen, and gets TCP_NODELAY: the library has no
// option for it, and without it each isolated command waits 40 ms for the broker's delayed ACK.
class Tap {
 public:
  explicit Tap(Tapped& tapped);
  ~Tap();
  Tap(const Tap&) = delete;
  Tap& operator=(const Tap&) = delete;
};

}  // namespace tidewright::mqtt
