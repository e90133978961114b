// The Homie convention: version 5, an open standard (homieiot.github.io). One device at
// `homie/5/<device>`, with a node for each thing and a property for each value. Pure; golden files
// in tests/golden/homie. Called by daemon/showing; daemon/mqtt/report_settings has its `$state`.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "daemon/hub/desk.hpp"
#include "daemon/hub/message.hpp"
#include "daemon/hub/offer.hpp"

namespace tidewright::hub {

// `homie/5/tidewright-<instance>`.
std::string homie_device(const Manifest& manifest);

// The description, each value that is known, and an `$alert` for each alarm that stands; all
// retained. What is not known is not there.
std::vector<Message> homie(const std::vector<Offer>& offers, const View& view,
                           const Manifest& manifest);

// What a controller's message on `…/set` asks or tells; none if no such property can be set, or not
// to that. `reflected` is to be published, not retained: the controller sees that it was taken.
struct HomieSet {
  Letter letter;
  Message reflected;
};
std::optional<HomieSet> homie_set(const std::vector<Offer>& offers, const Manifest& manifest,
                                  const Letter& letter, std::string_view topic);

// The announcement, not retained.
Message homie(const report::Message& announcement, const WallClock& wall,
              const config::Household& household, const Manifest& manifest);

}  // namespace tidewright::hub
