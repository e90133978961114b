// The discovery convention: one device that the most used open hub builds by itself, from one
// retained message at `<prefix>/device/<node>/config`. What it shows is published by hub/plain; the
// message says where, and in which unit. Pure; golden files in tests/golden/discovery. Called by
// daemon/showing.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "daemon/hub/message.hpp"
#include "daemon/hub/offer.hpp"

namespace tidewright::hub {

// `manifest`: what is listed there and no more offered is taken back, by its platform alone.
Message discovery(const std::vector<Offer>& offers, const config::Household& household,
                  const Manifest& manifest);

// Key and platform of each.
std::map<std::string, std::string> components_of(const std::vector<Offer>& offers);

// On which the hub says `online` when it has started.
std::string birth_topic(const config::Household& household);

}  // namespace tidewright::hub
