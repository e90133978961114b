// Loopback sockets.
#pragma once

namespace tidewright::support {

// A listening socket on a free port of 127.0.0.1.
struct Listener {
  int fd;
  int port;
};
Listener listen_on_loopback();

// Connected, with TCP_NODELAY; -1 if nobody listens.
int connect_to_loopback(int port);
void no_delay(int fd);

}  // namespace tidewright::support
