// The panel's threads on one side, a reporter's on the other.
#include "daemon/panel/counter.hpp"

#include <gtest/gtest.h>

#include <thread>

#include "daemon/base/bell.hpp"

namespace tidewright::panel {
namespace {

using namespace std::chrono_literals;
using Steady = std::chrono::steady_clock;

hub::Letter saying(const std::string& payload) {
  return {.verb = hub::Verb::ask, .payload = payload, .response_topic = {}, .correlation = {}};
}

// Answers each letter with its own words.
class Clerk {
 public:
  explicit Clerk(Counter& counter) : counter_(counter) {
    counter_.open([this] { bell_.ring(); });
    thread_ = std::thread([this] {
      while (!done_) {
        bell_.wait_until(Steady::now() + 10s);
        while (const auto letter = counter_.next()) {
          counter_.answer(letter->question, {.done = true, .why = letter->payload, .token = {}});
        }
      }
    });
  }
  ~Clerk() {
    counter_.close();
    done_ = true;
    bell_.ring();
    thread_.join();
  }

 private:
  Counter& counter_;
  Bell bell_;
  std::atomic<bool> done_ = false;
  std::thread thread_;
};

TEST(PanelCounter, GivesEachItsOwnAnswer) {
  Counter counter;
  const Clerk clerk(counter);
  std::vector<std::thread> panel;
  std::atomic<int> right = 0;
  for (int i = 0; i < 4; ++i) {
    panel.emplace_back([&, i] {
      for (int n = 0; n < 200; ++n) {
        const std::string words = std::to_string(i * 1000 + n);
        const auto outcome = counter.ask(saying(words), 10s);
        if (outcome && outcome->why == words) ++right;
      }
    });
  }
  for (std::thread& each : panel) each.join();
  EXPECT_EQ(right, 800);
}

TEST(PanelCounter, NobodyIsThereBeforeItOpens) {
  Counter counter;
  EXPECT_FALSE(counter.ask(saying("x"), 10s));
  EXPECT_FALSE(counter.next());
}

// What was given up is not carried out behind somebody's back.
TEST(PanelCounter, TakesALetterBackThatNobodyTookInTime) {
  Counter counter;
  counter.open([] {});
  EXPECT_FALSE(counter.ask(saying("x"), 1ms));
  EXPECT_FALSE(counter.next());
  counter.answer(1, {});  // too late: nobody is there
}

TEST(PanelCounter, HoldsSoManyLettersAtMostAndSendsAllHomeWhenItCloses) {
  Counter counter;
  Bell rung;
  counter.open([&] { rung.ring(); });
  std::vector<std::thread> waiting;
  std::atomic<int> unanswered = 0;
  for (std::size_t i = 0; i < Counter::letters_most; ++i) {
    waiting.emplace_back([&] { unanswered += counter.ask(saying("x"), 60s) ? 0 : 1; });
  }
  std::size_t taken = 0;
  while (taken < Counter::letters_most) {
    rung.wait_until(Steady::now() + 10s);
    while (counter.next()) ++taken;
  }
  const auto began = Steady::now();
  EXPECT_FALSE(counter.ask(saying("one more"), 60s));
  counter.close();
  for (std::thread& each : waiting) each.join();
  EXPECT_LT(Steady::now() - began, 10s);
  EXPECT_EQ(unanswered, static_cast<int>(Counter::letters_most));
}

TEST(Bell, WakesOnceForAllThatRangAndOtherwiseInTime) {
  Bell bell;
  bell.ring();
  bell.ring();
  const auto began = Steady::now();
  bell.wait_until(began + 60s);
  EXPECT_LT(Steady::now() - began, 30s);
  bell.wait_until(began + 1ms);
  EXPECT_GE(Steady::now() - began, 1ms);
  bell.wait_until(began - 1s);
  std::thread other([&] { bell.ring(); });
  bell.wait_until(Steady::now() + 60s);
  EXPECT_LT(Steady::now() - began, 30s);
  other.join();
}

}  // namespace
}  // namespace tidewright::panel
