// What the synchronous Paho library keeps to itself: its socket and its TLS session.
// The program is linked with --wrap=connect, SSL_set_fd and SSL_free (daemon/CMakeLists.txt), so
// that the library's calls pass through tap.cpp. Everybody else's calls pass unchanged.
#pragma once

#include <string>

struct ssl_st;

namespace tidewright::mqtt {

struct Tapped {
  int socket = -1;
  ssl_st* tls = nullptr;
  bool tls_begun = false;  // somebody took the connection, and TLS was tried
  // OpenSSL's, of a session that was given up.
  long verify_result = 0;
  bool peer_showed_certificate = false;
  int alert = 0;  // what the broker said when it refused TLS (RFC 8446, 6.2); 0 = nothing
};

// While one lives, what its own thread connects is seen, and gets TCP_NODELAY: the library has no
// option for it, and without it each isolated command waits 40 ms for the broker's delayed ACK.
// The certificate must be for `host`, a name or an address: the library looks at that only
// afterwards, and then does not say what was wrong.
class Tap {
 public:
  Tap(Tapped& tapped, std::string host);
  ~Tap();
  Tap(const Tap&) = delete;
  Tap& operator=(const Tap&) = delete;

 private:
  const std::string host_;
};

}  // namespace tidewright::mqtt
