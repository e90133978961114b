// What can be wrong with certificates, in words: with the files that the household names, and in
// the broker's eyes and ours when a TLS connection is refused.
#pragma once

#include <string>

#include "daemon/mqtt/access.hpp"
#include "daemon/mqtt/tap.hpp"

namespace tidewright::mqtt {

// Whole sentences; empty if the files of `access` can be used, or none is named.
std::string files_trouble(const Access& access);

// Why TLS was refused, to stand after "cannot be reached: "; empty if it was not.
std::string tls_trouble(const Tapped& tapped, const Access& access);

}  // namespace tidewright::mqtt
