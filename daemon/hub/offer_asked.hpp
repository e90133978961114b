// What a person can press or type at a hub: each publishes an ask or a tell as any other client
// would, not retained. Part of hub/offer.
#pragma once

#include <vector>

#include "daemon/hub/offer.hpp"

namespace tidewright::hub {

void add_asked(const View& view, std::vector<Offer>& out);

}  // namespace tidewright::hub
