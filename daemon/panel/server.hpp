// The panel's HTTP server: cpp-httplib, bounded on every side. Its threads touch nothing of the
// daemon but what they are given here.
#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "daemon/panel/feed.hpp"
#include "daemon/panel/form.hpp"

namespace tidewright::panel {

// What is asked of the panel.
struct Call {
  std::string path;
  std::string cookie;  // the header
  std::string origin;  // the header
  std::string from;    // the caller's address
  bool posts = false;  // a form was sent:
  Form form = {};      // the first of each name
};

struct Reply {
  int status = 200;
  std::string type = "text/html; charset=utf-8";
  std::string body;
  std::vector<std::pair<std::string, std::string>> headers = {};
};

// How much of it there is at most.
struct Limits {
  std::size_t connections = 64;  // at once; others wait at the door
  std::size_t streams = 56;      // of these, pages that are kept up to date
  std::size_t request_bytes = std::size_t{16} * 1024;
  std::chrono::milliseconds request_time{5'000};  // to send the whole request
  std::chrono::milliseconds write_time{5'000};    // to take what was sent
  std::chrono::milliseconds beat{10'000};         // a stream says something at least so often
};

class Server {
 public:
  struct Settings {
    std::string address;
    std::uint16_t port = 0;  // 0: any
    std::vector<std::string> names;
    Limits limits;
    bool takes_forms = false;  // at /tell and below
  };
  // Called by several threads at once.
  using Answer = std::function<Reply(const Call&)>;

  // Listens at once, `/events` being `feed`. Throws std::runtime_error if it cannot.
  Server(const Settings&, Feed& feed, Answer);
  // Ends every connection at once.
  ~Server();
  Server(const Server&) = delete;
  Server& operator=(const Server&) = delete;

  int port() const;

 private:
  class Http;
  std::unique_ptr<Http> http_;
};

}  // namespace tidewright::panel
