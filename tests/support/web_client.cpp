#include "tests/support/web_client.hpp"

#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <array>

#include "tests/support/socket.hpp"

namespace tidewright::support {

using namespace std::chrono_literals;
using Steady = std::chrono::steady_clock;

WebClient::WebClient(int port) : fd_(connect_to_loopback(port)) {}
WebClient::~WebClient() {
  if (fd_ >= 0) close(fd_);
}

bool WebClient::send(const std::string& bytes) {
  std::size_t sent = 0;
  while (sent < bytes.size()) {
    const ssize_t size = ::send(fd_, bytes.data() + sent, bytes.size() - sent, MSG_NOSIGNAL);
    if (size <= 0) return false;
    sent += static_cast<std::size_t>(size);
  }
  return true;
}

bool WebClient::read_some(std::chrono::milliseconds bound) {
  pollfd wait{fd_, POLLIN, 0};
  if (ended_ || poll(&wait, 1, static_cast<int>(bound.count())) <= 0) return false;
  std::array<char, 4096> bytes{};
  const ssize_t size = recv(fd_, bytes.data(), bytes.size(), 0);
  ended_ = size <= 0;
  if (!ended_) came_.append(bytes.data(), static_cast<std::size_t>(size));
  return !ended_;
}

const std::string& WebClient::read_until(const std::string& enough,
                                         std::chrono::milliseconds bound) {
  const auto end = Steady::now() + bound;
  while (came_.find(enough) == came_.npos) {
    const auto left = std::chrono::ceil<std::chrono::milliseconds>(end - Steady::now());
    if (left <= 0ms || !read_some(left)) break;
  }
  return came_;
}

bool WebClient::ended(std::chrono::milliseconds bound) {
  const auto end = Steady::now() + bound;
  while (!ended_) {
    const auto left = std::chrono::ceil<std::chrono::milliseconds>(end - Steady::now());
    if (left <= 0ms) return false;
    read_some(left);
  }
  return true;
}

std::string ask_web(int port, const std::string& request) {
  WebClient client(port);
  client.send(request);
  client.ended(20s);
  return client.read_until("", 0ms);
}

std::string get_page(int port, const std::string& path, const std::string& headers) {
  return ask_web(port, "GET " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\n" + headers + "\r\n");
}

std::string post_form(int port, const std::string& path, const std::string& form,
                      const std::string& headers) {
  return ask_web(port, "POST " + path +
                           " HTTP/1.1\r\nHost: 127.0.0.1\r\nOrigin: http://127.0.0.1\r\n"
                           "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: " +
                           std::to_string(form.size()) + "\r\n" + headers + "\r\n" + form);
}

}  // namespace tidewright::support
