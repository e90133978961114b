// The pages below /tell: who gives the token may ask and tell. Finds out who calls, hands requests
// to the counter, and remembers the answers for the pages that follow. By several threads at once.
#pragma once

#include <condition_variable>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

#include "config/household.hpp"
#include "daemon/panel/counter.hpp"
#include "daemon/panel/gate.hpp"
#include "daemon/panel/question.hpp"
#include "daemon/panel/server.hpp"
#include "daemon/panel/tell_page.hpp"

namespace tidewright::panel {

class Asking {
 public:
  // Both outlive it. Without a token there are no such pages.
  Asking(const config::Household& household, const Style& style, const std::string& token)
      : style_(style), gate_(token), questions_(panel::questions(household.room)) {}

  bool exists() const { return gate_.exists(); }
  Counter& counter() { return counter_; }
  // By the reporter's thread: what stands now.
  void show(std::vector<Standing> alarms);
  // Nobody waits any more.
  void close();

  // Of /tell and all below it. A body of HTML is what stands in <main>.
  Reply answer(const Call& call);
  // The section `answers` of the front page, for who was let in.
  std::optional<Part> beside(const Call& call) const;

 private:
  Reply enter(const Call& call);
  Reply post(const Call& call, const std::string& session, const Visitor& visitor);
  Reply page(const Call& call, const Visitor& visitor) const;
  std::optional<Question> find(const std::string& path) const;
  std::string came(const Visitor& visitor, bool about_alarms) const;
  Part buttons(const Visitor& visitor, bool all, const std::string& answered) const;
  void wait_until_shown(const std::string& mark);
  std::string mark() const;

  const Style& style_;
  Gate gate_;
  const std::vector<Question> questions_;
  Counter counter_;
  mutable std::mutex lock_;  // of what follows
  std::condition_variable shown_;
  std::vector<Standing> alarms_;
  bool closed_ = false;
};

}  // namespace tidewright::panel
