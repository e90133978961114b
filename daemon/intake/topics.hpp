// Which instruments a topic belongs to. One hash map, made once at start; nothing on the way of a
// message but one look-up.
#pragma once

#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "config/household.hpp"
#include "core/room/room.hpp"

namespace tidewright::intake {

struct Target {
  enum class Kind : std::uint8_t { reading, availability };
  Kind kind{};
  room::InstrumentIndex instrument = 0;
  friend bool operator==(const Target&, const Target&) = default;
};

class Topics {
 public:
  explicit Topics(const config::Household& household);

  // Everything that a message on this topic speaks of; empty for a topic of somebody else.
  std::span<const Target> find(std::string_view topic) const;
  // Each topic once, in the order of the file.
  const std::vector<std::string>& subscriptions() const { return subscriptions_; }

 private:
  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view text) const {
      return std::hash<std::string_view>{}(text);
    }
  };
  void add(const std::string& topic, Target target);

  std::unordered_map<std::string, std::vector<Target>, Hash, std::equal_to<>> targets_;
  std::vector<std::string> subscriptions_;
};

}  // namespace tidewright::intake
