#include <fmt/format.h>
#include <fmt/ranges.h>

#include "config/protection.hpp"
#include "core/report/phrases.hpp"

namespace tidewright::config {
namespace {

using report::lasting;
using report::number;

std::string counted(std::size_t count, std::string_view what) {
  return fmt::format("{} {}{}", count, what, count == 1 ? "" : "s");
}

std::string cases(std::string_view title, const std::vector<Case>& list) {
  if (list.empty()) return "";
  std::string text = fmt::format("\n{}\n", title);
  for (const Case& one : list) text += fmt::format("  If {}: {}.\n", one.happening, one.outcome);
  return text;
}

std::string stakes(const std::vector<Stake>& list) {
  if (list.empty()) return "";
  std::string text = fmt::format(
      "\nAt stake: the longest without protection, and the most water that runs in that time\n"
      "(the rated flow; {} times that before the membrane, where the feed water runs)\n",
      feed_per_product);
  for (const Stake& stake : list) {
    text += fmt::format("  If {}: {}, {} L.\n", stake.happening, lasting(stake.lasting),
                        number(stake.litres.value));
  }
  return text;
}

std::string rises(const std::vector<Rise>& list) {
  if (list.empty()) return "";
  std::string text = "\nFrom mark to mark at the rated flow\n";
  for (const Rise& rise : list) {
    text += fmt::format("  {} {} L to {} {} L: {:.0f} s ({}).\n", rise.from.name,
                        number(rise.from.at.value), rise.to.name, number(rise.to.at.value),
                        seconds(rise.at_rated_flow), lasting(rise.at_rated_flow));
  }
  return text;
}

}  // namespace

std::string words(const Protection& protection, const Household& household) {
  std::string text = fmt::format("The file is good: room {} with {} and {}.\n", household.room.id,
                                 counted(household.room.instruments.size(), "instrument"),
                                 counted(household.room.actuators.size(), "actuator"));
  text += cases("Protected", protection.had);
  text += cases("Not protected", protection.not_had);
  text += stakes(protection.at_stake);
  text += rises(protection.rises);
  text += fmt::format("\nAlarms that the daemon can raise here: {}.\n",
                      fmt::join(protection.alarms, ", "));
  if (!protection.alarms_not.empty()) {
    text +=
        fmt::format("Alarms that it cannot raise: {}.\n", fmt::join(protection.alarms_not, ", "));
  }
  return text;
}

}  // namespace tidewright::config
