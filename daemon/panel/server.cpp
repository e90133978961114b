#include "daemon/panel/server.hpp"

#include <fmt/format.h>
#include <httplib.h>
#include <netdb.h>
#include <netinet/in.h>
#include <poll.h>
#include <sys/eventfd.h>

#include <array>
#include <atomic>
#include <condition_variable>
#include <cstring>
#include <mutex>
#include <stdexcept>
#include <system_error>
#include <thread>

#include "daemon/base/descriptor.hpp"
#include "daemon/panel/door.hpp"

namespace tidewright::panel {
namespace {

using std::chrono::milliseconds;
using Steady = std::chrono::steady_clock;

// One client's connection: so many bytes and so much time for a request, and it ends at once when
// the panel does.
class Connection : public httplib::Stream {
 public:
  Connection(socket_t socket, int stop, const Limits& limits)
      : socket_(socket),
        stop_(stop),
        limits_(limits),
        read_until_(Steady::now() + limits.request_time),
        bytes_left_(limits.request_bytes) {}

  bool is_readable() const override { return ready(POLLIN, milliseconds{0}); }
  bool is_writable() const override { return ready(POLLOUT, milliseconds{0}); }

  ssize_t read(char* to, size_t size) override {
    const auto left = std::chrono::ceil<milliseconds>(read_until_ - Steady::now());
    if (bytes_left_ == 0 || left.count() <= 0 || !ready(POLLIN, left)) return -1;
    const ssize_t got = recv(socket_, to, std::min(size, bytes_left_), 0);
    if (got > 0) bytes_left_ -= static_cast<std::size_t>(got);
    return got;
  }
  ssize_t write(const char* from, size_t size) override {
    if (!ready(POLLOUT, limits_.write_time)) return -1;
    return send(socket_, from, size, MSG_NOSIGNAL | MSG_DONTWAIT);
  }
  void get_remote_ip_and_port(std::string& ip, int& port) const override {
    sockaddr_storage address{};
    socklen_t size = sizeof address;
    std::array<char, NI_MAXHOST> text{};
    auto* generic = reinterpret_cast<sockaddr*>(&address);
    const bool known =
        getpeername(socket_, generic, &size) == 0 &&
        getnameinfo(generic, size, text.data(), text.size(), nullptr, 0, NI_NUMERICHOST) == 0;
    ip = known ? text.data() : "";
    port = 0;
  }
  // Nobody asks which of its own addresses it is.
  void get_local_ip_and_port(std::string& ip, int& port) const override {
    ip.clear();
    port = 0;
  }
  socket_t socket() const override { return socket_; }

 private:
  bool ready(short what, milliseconds patience) const {
    pollfd waits[2]{{socket_, what, 0}, {stop_, POLLIN, 0}};
    if (poll(waits, 2, static_cast<int>(patience.count())) <= 0) return false;
    return waits[1].revents == 0;
  }

  socket_t socket_;
  int stop_;
  const Limits& limits_;
  Steady::time_point read_until_;
  std::size_t bytes_left_;
};

// A thread for each connection, so many at most. Who comes then waits in the system's own queue.
class Crew : public httplib::TaskQueue {
 public:
  explicit Crew(std::size_t most) : most_(most) {}

  void enqueue(std::function<void()> task) override {
    std::unique_lock guard(lock_);
    changed_.wait(guard, [this] { return at_work_ < most_; });
    ++at_work_;
    guard.unlock();
    const auto work = [this, task = std::move(task)] {
      task();
      const std::lock_guard done(lock_);
      --at_work_;
      changed_.notify_all();
    };
    try {
      std::thread(work).detach();
    } catch (const std::system_error&) {
      work();  // no thread is to be had: the door itself answers, and others wait
    }
  }
  void shutdown() override {
    std::unique_lock guard(lock_);
    changed_.wait(guard, [this] { return at_work_ == 0; });
  }

 private:
  const std::size_t most_;
  std::mutex lock_;
  std::condition_variable changed_;
  std::size_t at_work_ = 0;
};

// A place among those whose pages are kept up to date.
class Seat {
 public:
  Seat(std::atomic<std::size_t>& taken, std::size_t most) : taken_(taken) {
    has_ = taken_.fetch_add(1) < most;
  }
  ~Seat() { taken_.fetch_sub(1); }
  Seat(const Seat&) = delete;
  Seat& operator=(const Seat&) = delete;
  bool has() const { return has_; }

 private:
  std::atomic<std::size_t>& taken_;
  bool has_ = false;
};

httplib::Headers guarded() {
  return {{"Content-Security-Policy",
           "default-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"},
          {"X-Content-Type-Options", "nosniff"},
          {"X-Frame-Options", "DENY"},
          // Nothing to others; with "no-referrer" our own forms would not say where they come from.
          {"Referrer-Policy", "same-origin"},
          {"Cross-Origin-Resource-Policy", "same-origin"},
          {"Cross-Origin-Opener-Policy", "same-origin"},
          {"Cache-Control", "no-store"}};
}

}  // namespace

class Server::Http : private httplib::Server {
 public:
  Http(const Settings& settings, Feed& feed, Answer answer)
      : settings_(settings),
        feed_(feed),
        answer_(std::move(answer)),
        stop_(eventfd(0, EFD_CLOEXEC)) {
    new_task_queue = [this] { return new Crew(settings_.limits.connections); };
    set_default_headers(guarded());
    set_tcp_nodelay(true);
    set_socket_options([](socket_t socket) {
      const int yes = 1;  // the port of the run before, at once; never another program's
      setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
    });
    set_payload_max_length(settings.limits.request_bytes);
    // Everything but a form is answered here, before any pattern is matched against what a stranger
    // sent; a form that is let in has its body read after this.
    set_pre_routing_handler([this](const httplib::Request& request, httplib::Response& response) {
      const bool is_form = handle(request, response);
      return is_form ? HandlerResponse::Unhandled : HandlerResponse::Handled;
    });
    Post("/tell/.*", [this](const httplib::Request& request, httplib::Response& response) {
      reply(request, response);
    });
    if (settings.port == 0) {
      port_ = bind_to_any_port(settings.address);
    } else if (bind_to_port(settings.address, settings.port)) {
      port_ = settings.port;
    }
    if (port_ <= 0) throw std::runtime_error(std::strerror(errno));
    thread_ = std::thread([this] {
      // Whoever decides goes first; the threads of connections are born here and inherit it.
      [[maybe_unused]] const int niceness = nice(10);
      listen_after_bind();
    });
    while (!is_running()) std::this_thread::yield();
  }

  ~Http() override {
    feed_.close();
    const std::uint64_t one = 1;
    [[maybe_unused]] const ssize_t written = ::write(stop_.number(), &one, sizeof one);
    stop();
    thread_.join();
  }

  int port() const { return port_; }

 private:
  // One request for each connection: nobody holds a place by doing nothing.
  bool process_and_close_socket(socket_t socket) override {
    Connection connection(socket, stop_.number(), settings_.limits);
    bool closed = false;
    const bool done = process_request(connection, true, closed, [](httplib::Request& request) {
      request.ranges.clear();
      request.headers.erase("Accept-Encoding");  // packing takes more memory than it saves here
    });
    shutdown(socket, SHUT_RDWR);
    close(socket);
    return done;
  }

  // True for a form that is let in, and not answered yet.
  bool handle(const httplib::Request& request, httplib::Response& response) {
    const std::string host = request.get_header_value("Host");
    const std::string origin = request.get_header_value("Origin");
    const bool may_write = settings_.takes_forms && request.path.starts_with("/tell/");
    const Refused no =
        refused({request.method, host, origin, request.target.size(), may_write}, settings_.names);
    if (no.status != 0) {
      response.status = no.status;
      if (no.status == 405) response.set_header("Allow", "GET, HEAD");
      response.set_content(no.why + "\n", "text/plain; charset=utf-8");
    } else if (request.method == "POST") {
      return true;
    } else if (request.path == "/events") {
      stream(request.get_header_value("Last-Event-ID"), response);
    } else {
      reply(request, response);
    }
    return false;
  }

  void reply(const httplib::Request& request, httplib::Response& response) {
    Call call{request.path, request.get_header_value("Cookie"), request.get_header_value("Origin"),
              request.remote_addr, request.method == "POST"};
    if (call.posts) {
      for (const auto& [name, value] : request.params) call.form.emplace(name, value);
    }
    const Reply made = answer_(call);
    response.status = made.status;
    for (const auto& [name, value] : made.headers) response.set_header(name, value);
    response.set_content(made.body, made.type);
  }

  void stream(const std::string& last_event_id, httplib::Response& response) {
    const auto seat = std::make_shared<Seat>(streams_, settings_.limits.streams);
    if (!seat->has()) {
      response.status = 503;
      response.set_header("Retry-After", "10");
      response.set_content("Too many pages are open.\n", "text/plain; charset=utf-8");
      return;
    }
    response.set_chunked_content_provider(
        "text/event-stream", [this, seat, position = feed_.position(last_event_id)](
                                 size_t, httplib::DataSink& sink) mutable {
          const auto text = feed_.next(position, settings_.limits.beat);
          return text != nullptr && sink.write(text->data(), text->size());
        });
  }

  const Settings settings_;
  Feed& feed_;
  const Answer answer_;
  Descriptor stop_;
  std::atomic<std::size_t> streams_{0};
  int port_ = 0;
  std::thread thread_;
};

Server::Server(const Settings& settings, Feed& feed, Answer answer)
    : http_(std::make_unique<Http>(settings, feed, std::move(answer))) {}
Server::~Server() = default;
int Server::port() const { return http_->port(); }

}  // namespace tidewright::panel
