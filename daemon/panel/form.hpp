// What a browser sent: its cookie and its form, bounded by the server. Pure.
#pragma once

#include <map>
#include <string>
#include <string_view>

namespace tidewright::panel {

using Form = std::map<std::string, std::string>;

// Empty if it is not there.
std::string field(const Form& form, const std::string& name);

// The value of that name in a Cookie header; empty if it is not there.
std::string cookie(std::string_view header, std::string_view name);

// A number as a person types it, with point or comma, as JSON; anything else as a JSON text, so
// that the desk says what is wrong with it.
std::string number_in_json(std::string_view typed);

}  // namespace tidewright::panel
