// Names that people try, and the key that does it.
#include <array>

#include "config/reader/keys.hpp"

namespace tidewright::config {
namespace {

constexpr std::array heir_rows{
    Heir{"password", "password_file", "The password itself has no place in this file.", true},
    Heir{"password", "token_file", "The token itself has no place in this file.", true},
    Heir{"token", "token_file", "The token itself has no place in this file.", true},
    Heir{"notify_at", "notify_ppm", ""},
    Heir{"stop_above", "stop_at", ""},
    Heir{"size", "volume", ""},
    Heir{"capacity", "volume", ""},
    Heir{"interval", "reports_every", ""},
    Heir{"timeout", "reports_every", "Three missed reports count as silence."},
    Heir{"json_path", "pointer", ""},
};

}  // namespace

std::span<const Heir> heirs() { return heir_rows; }

}  // namespace tidewright::config
