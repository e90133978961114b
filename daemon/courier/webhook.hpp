// Posts a letter to the household's webhook, with the heads of the Standard Webhooks.
#pragma once

#include "config/household.hpp"
#include "daemon/post/letter.hpp"

namespace tidewright::courier {

post::Outcome deliver(const config::Webhook& webhook, const post::Letter& letter);

}  // namespace tidewright::courier
