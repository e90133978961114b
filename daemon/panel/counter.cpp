#include "daemon/panel/counter.hpp"

#include <utility>

namespace tidewright::panel {

std::optional<hub::Outcome> Counter::ask(hub::Letter letter, std::chrono::milliseconds patience) {
  std::unique_lock guard(lock_);
  if (!wake_ || waiting_.size() >= letters_most) return std::nullopt;
  const std::uint64_t question = ++last_;
  letter.question = question;
  letters_.push_back(std::move(letter));
  std::optional<hub::Outcome>& outcome = waiting_[question];
  wake_();
  answered_.wait_for(guard, patience, [&] { return outcome.has_value() || !wake_; });
  std::optional<hub::Outcome> found = std::move(outcome);
  waiting_.erase(question);
  std::erase_if(letters_, [&](const hub::Letter& each) { return each.question == question; });
  return found;
}

void Counter::open(std::function<void()> wake) {
  const std::lock_guard guard(lock_);
  wake_ = std::move(wake);
}

void Counter::close() {
  {
    const std::lock_guard guard(lock_);
    wake_ = nullptr;
  }
  answered_.notify_all();
}

std::optional<hub::Letter> Counter::next() {
  const std::lock_guard guard(lock_);
  if (letters_.empty()) return std::nullopt;
  hub::Letter letter = std::move(letters_.front());
  letters_.pop_front();
  return letter;
}

void Counter::answer(std::uint64_t question, hub::Outcome outcome) {
  {
    const std::lock_guard guard(lock_);
    const auto waiting = waiting_.find(question);
    if (waiting == waiting_.end()) return;
    waiting->second = std::move(outcome);
  }
  answered_.notify_all();
}

}  // namespace tidewright::panel
