#include "tests/support/hostile.hpp"

#include <fmt/format.h>
#include <poll.h>
#include <sys/mman.h>
#include <sys/prctl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <memory>
#include <new>
#include <stdexcept>
#include <string>

#include "core/rehearsal/chance.hpp"
#include "tests/support/garbage.hpp"
#include "tests/support/mqtt_client.hpp"

namespace tidewright::support {
namespace {

using rehearsal::Chance;

constexpr int beats_a_second = 50;

std::string any_of(Chance& chance, std::initializer_list<const char*> words) {
  return words.begin()[chance.bits() % words.size()];
}

std::string sensor(Chance& chance) {
  return "home/waterroom/" +
         any_of(chance, {"vat_level", "temperature", "feed_tds", "product_tds", "leak", "booster"});
}

std::string believable(const std::string& topic, Chance& chance) {
  if (topic.ends_with("leak")) return "dry";
  if (topic.ends_with("booster")) return "unknown";
  return std::to_string(chance.bits() % 100);
}

Message anything(Chance& chance) {
  const auto number = chance.bits();
  const std::string topic = sensor(chance);
  const std::string request = "tidewright/waterroom/" + any_of(chance, {"ask", "tell"});
  switch (number % 10) {
    case 0:
      return {.topic = topic, .payload = garbage()[chance.bits() % garbage().size()].payload};
    case 1:
      return {.topic = "home/waterroom/booster/set", .payload = "ON", .retained = true};
    case 2:
      return {.topic = request, .payload = std::string(2'000, '[')};
    case 3:
      return {.topic = request, .payload = "\xff\xfe\xc0\x80", .retained = true};
    case 4:
      return {.topic = fmt::format("tidewright/waterroom/value/{:x}", number), .payload = "1"};
    case 5:
      return {.topic = fmt::format("tidewright/{:x}/{:x}", number, chance.bits()), .payload = "1"};
    case 6:
      return {.topic = request,
              .payload =
                  fmt::format(R"({{"ask":"reset","alarm":"leak","who":"x","id":"{:x}"}})", number)};
    case 7:
      if (number % 200 == 7) return {.topic = "home/+/leak", .payload = "dry"};
      if (number % 200 == 107) return {.topic = topic, .payload = std::string(256 * 1024, '1')};
      [[fallthrough]];
    default:
      return {.topic = topic, .payload = believable(topic, chance)};
  }
}

[[noreturn]] void harass(int port, int per_second, Chance chance,
                         std::atomic<std::uint64_t>& sent) {
  prctl(PR_SET_PDEATHSIG, SIGKILL);
  std::unique_ptr<MqttClient> line;
  auto beat = std::chrono::steady_clock::now();
  while (true) {
    for (int i = 0; i < per_second / beats_a_second; ++i) {
      try {
        if (!line) line = std::make_unique<MqttClient>(port, "hostile", 4);
        line->publish(anything(chance));
        ++sent;
      } catch (const std::exception&) {
        line.reset();  // the broker throws out who writes a wildcard
      }
    }
    beat += std::chrono::milliseconds{1'000 / beats_a_second};
    const auto left = beat - std::chrono::steady_clock::now();
    poll(nullptr, 0,
         static_cast<int>(
             std::max<long>(0, std::chrono::duration_cast<Milliseconds>(left).count())));
  }
}

}  // namespace

Hostile::Hostile(int port, int per_second, std::uint64_t seed) {
  void* const shared =
      mmap(nullptr, sizeof(*sent_), PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
  if (shared == MAP_FAILED) throw std::runtime_error("no shared memory");
  sent_ = new (shared) std::atomic<std::uint64_t>{0};
  pid_ = fork();
  if (pid_ == 0) harass(port, per_second, Chance{seed}, *sent_);
}

Hostile::~Hostile() {
  kill(pid_, SIGKILL);
  waitpid(pid_, nullptr, 0);
  munmap(sent_, sizeof(*sent_));
}

}  // namespace tidewright::support
