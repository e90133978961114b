// Which fields of the report are offered to hubs, and what each of them means.
#pragma once

#include <array>
#include <initializer_list>
#include <span>
#include <string_view>

#include "core/room/room.hpp"
#include "daemon/hub/offer.hpp"

namespace tidewright::hub {

// An instrument that a value is made from.
struct MadeFrom {
  room::Quantity quantity{};
  room::Place place{};
};

// In the order in which a row is read.
// NOLINTNEXTLINE(clang-analyzer-optin.performance.Padding)
struct Row {
  std::string_view thing;  // its kind
  std::string_view field;
  Shape shape{};
  std::string_view name;
  std::string_view unit = {};
  std::string_view meaning = {};
  bool aside = false;
  std::span<const std::string_view> options = {};
  std::span<const MadeFrom> from = {};           // offered where all of these are installed
  bool (*applies)(const room::Room&) = nullptr;  // further conditions
};

std::span<const Row> offer_rows();

}  // namespace tidewright::hub
