// From `wet` to `OFF` through a private mosquitto, in microseconds: the daemon beside a responder
// written by hand on bare epoll, which is the floor of what any program can do. The two take turns
// in the same run: only their ratio means something.
// Bounds (docs): isolated p50 <= 1.7 x floor and none over 10 ms; at 200 a second p50 <= 1.9 x
// floor and none lost; the same while the disk is blocked; <= 100 ms while everything is published.
//   bench_reaction [leaks = 90]
#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <random>

#include "tests/support/broker.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/floor.hpp"
#include "tests/support/mqtt_client.hpp"

namespace {

using namespace tidewright::support;
using Steady = std::chrono::steady_clock;

// The floor's own late ones tell how busy the machine was.
long late(const Path& path) {
  return std::count_if(path.microseconds.begin(), path.microseconds.end(),
                       [](double us) { return us > 10'000; });
}

void print(const std::string& row, const Path& floor, const Path& daemon) {
  fmt::print(
      "{:34} floor p50 {:6.0f} us | daemon p50 {:6.0f} us  p99 {:6.0f}  max {:6.0f} | ratio {:4.2f}"
      " | of {}: {} over 10 ms (floor {}), {} lost\n",
      row, quantile(floor, 0.5), quantile(daemon, 0.5), quantile(daemon, 0.99), quantile(daemon, 1),
      quantile(daemon, 0.5) / quantile(floor, 0.5), daemon.microseconds.size(), late(daemon),
      late(floor), daemon.lost);
  std::fflush(stdout);
}

// Everything that one row needs: a broker, both responders, and a hand that wets the floor.
struct Bench {
  explicit Bench(const std::string& settings)
      : broker(settings),
        floor(broker.port()),
        daemon(source_file("config/minimal.toml"), broker.uri()),
        home(broker.port(), "home") {
    home.subscribe("+/set");
    home.subscribe("home/waterroom/+/set");
    home.subscribe("tidewright/online");
    if (!home.await("tidewright/online", "online", Milliseconds{30'000})) std::exit(1);
  }

  void isolated(const std::string& row, int leaks) {
    Path floor_path{Floor::leak, Floor::set};
    Path daemon_path{"home/waterroom/leak", "home/waterroom/booster/set"};
    std::minstd_rand chance(1);
    std::uniform_int_distribution<int> gap(1'200, 3'200);
    for (int i = 0; i < leaks; ++i) {
      for (Path* path : {&floor_path, &daemon_path}) {
        home.await([](const Message&) { return false; }, Milliseconds{gap(chance)});
        react(home, *path);
      }
    }
    print(row, floor_path, daemon_path);
  }

  void steady(const std::string& row, int leaks) {
    Path floor_path{Floor::leak, Floor::set};
    Path daemon_path{"home/waterroom/leak", "home/waterroom/booster/set"};
    auto next = Steady::now();
    for (int i = 0; i < leaks; ++i) {
      for (Path* path : {&floor_path, &daemon_path}) {
        next += Milliseconds{5};
        const auto left = std::chrono::duration_cast<Milliseconds>(next - Steady::now());
        home.await([](const Message&) { return false; }, std::max(left, Milliseconds{0}));
        react(home, *path);
      }
    }
    print(row, floor_path, daemon_path);
  }

  void disk_blocked(const std::string& row) {
    std::vector<std::unique_ptr<SQLite::Database>> locks;
    for (const char* file : {"/state.db", "/journal.db"}) {
      locks.push_back(std::make_unique<SQLite::Database>(daemon.state_directory() + file,
                                                         SQLite::OPEN_READWRITE, 5'000));
      locks.back()->exec("BEGIN IMMEDIATE");
    }
    steady(row, 200);  // 2 s
  }

  Broker broker;
  Floor floor;
  DaemonProcess daemon;
  MqttClient home;
};

// The report line is thrown out by its own client id, comes back and publishes everything; a leak
// comes in the midst of it.
void while_publishing(Bench& bench) {
  Path path{"home/waterroom/leak", "home/waterroom/booster/set"};
  bench.home.subscribe("tidewright/#");
  std::size_t before = 0;
  for (int round = 0; round < 5; ++round) {
    bench.home.await([](const Message&) { return false; }, Milliseconds{1'000});
    { const MqttClient thief(bench.broker.port(), "tidewright-report"); }
    before = bench.home.seen().size();
    bench.home.await("tidewright/online", "online", Milliseconds{30'000});
    react(bench.home, path);
  }
  bench.home.await([](const Message&) { return false; }, Milliseconds{1'000});
  fmt::print("{:34} worst of 5 {:.1f} ms, {} lost; {} messages published around the last\n",
             "while everything is published", quantile(path, 1) / 1'000, path.lost,
             bench.home.seen().size() - before);
}

}  // namespace

int main(int argc, char** argv) {
  const int leaks = argc > 1 ? std::atoi(argv[1]) : 90;
  {
    Bench bench("set_tcp_nodelay true");
    bench.isolated("isolated", leaks);
    bench.steady("200 a second", 1'000);
    bench.disk_blocked("200 a second, disk blocked 2 s");
    while_publishing(bench);
  }
  Bench plain("");
  plain.isolated("isolated, the broker's default", leaks / 3);
}
