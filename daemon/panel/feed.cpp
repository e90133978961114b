#include "daemon/panel/feed.hpp"

#include <fmt/format.h>

#include <charconv>
#include <utility>

#include "daemon/panel/html.hpp"

namespace tidewright::panel {
namespace {

// The parts that are not as they were.
std::string difference(const Parts& before, const Parts& after) {
  std::string html;
  for (std::size_t i = 0; i < after.size(); ++i) {
    if (i >= before.size() || !(before[i] == after[i])) html += after[i].html;
  }
  return html;
}

std::string joined(const Parts& parts) { return difference({}, parts); }

}  // namespace

Feed::Feed(std::uint64_t run) : run_(fmt::format("{:x}", run)) {}

// Every part is one line; so the data of an event is one line, too.
std::string Feed::event(std::string_view kind, std::uint64_t number,
                        const std::string& html) const {
  const std::string as_of = element("span", " id=\"as-of\"", escaped(as_of_));
  return fmt::format("event: {}\nretry: 2000\nid: {}-{}\ndata: {}{}\n\n", kind, run_, number, as_of,
                     html);
}

void Feed::publish(Parts parts, std::string as_of) {
  {
    const std::lock_guard guard(lock_);
    const std::string changed = difference(parts_, parts);
    parts_ = std::move(parts);
    as_of_ = std::move(as_of);
    if (changed.empty()) return;
    auto text = std::make_shared<const std::string>(event("change", ++number_, changed));
    bytes_ += text->size();
    changes_.push_back({number_, std::move(text)});
    while (changes_.size() > changes_kept || (bytes_ > bytes_kept && changes_.size() > 1)) {
      bytes_ -= changes_.front().text->size();
      changes_.pop_front();
    }
  }
  changed_.notify_all();
}

void Feed::close() {
  {
    const std::lock_guard guard(lock_);
    closed_ = true;
  }
  changed_.notify_all();
}

std::string Feed::main(const Part& own) const {
  const std::lock_guard guard(lock_);
  std::string html;
  for (const Part& part : parts_) html += part.id == own.id ? own.html : part.html;
  return html;
}

std::string Feed::as_of() const {
  const std::lock_guard guard(lock_);
  return as_of_;
}

std::uint64_t Feed::position(std::string_view id) const {
  const std::size_t dash = id.find('-');
  if (dash == id.npos || id.substr(0, dash) != run_) return 0;
  std::uint64_t number = 0;
  const char* end = id.data() + id.size();
  const auto read = std::from_chars(id.data() + dash + 1, end, number);
  return read.ec == std::errc{} && read.ptr == end ? number : 0;
}

// Called with the lock held.
std::shared_ptr<const std::string> Feed::ready(std::uint64_t& position) const {
  if (position == number_) return nullptr;
  const bool kept = position != 0 && position < number_ && changes_.front().number <= position + 1;
  if (!kept) {
    position = number_;
    return std::make_shared<const std::string>(event("snapshot", number_, joined(parts_)));
  }
  const Change& change = changes_[position + 1 - changes_.front().number];
  position = change.number;
  return change.text;
}

std::shared_ptr<const std::string> Feed::next(std::uint64_t& position,
                                              std::chrono::milliseconds patience) {
  std::unique_lock guard(lock_);
  changed_.wait_for(guard, patience, [&] { return closed_ || position != number_; });
  if (closed_) return nullptr;
  if (auto text = ready(position)) return text;
  return std::make_shared<const std::string>(event("beat", number_, {}));
}

}  // namespace tidewright::panel
