#include <arpa/inet.h>
#include <fmt/format.h>

#include <array>

#include "config/reader/draft.hpp"

namespace tidewright::config {
namespace {

bool is_address(const std::string& text) {
  std::array<unsigned char, sizeof(in6_addr)> bytes{};
  return inet_pton(AF_INET, text.c_str(), bytes.data()) == 1 ||
         inet_pton(AF_INET6, text.c_str(), bytes.data()) == 1;
}

Outline outline(const std::string& word) {
  if (word == "cone") return Outline::cone;
  return word == "box" ? Outline::box : Outline::drum;
}

}  // namespace

void read_panel(Draft& draft) {
  if (!draft.panel) return;
  const Section& from = *draft.panel;
  Panel panel;
  panel.address = from.text("address");
  panel.port = static_cast<std::uint16_t>(from.number("port"));
  if (const Value* names = from.told("names")) panel.names = names->words;
  panel.us_units = from.text("units") == "US";
  panel.twelve_hours = from.text("clock") == "12 h";
  panel.language = from.text("language") == "Deutsch" ? Language::german : Language::english;
  panel.outline = outline(from.text("vat_outline"));
  panel.token_file = from.text("token_file");
  if (from.told("token_file") != nullptr && !panel.token_file.starts_with('/')) {
    draft.problems.add_secret(from.at("token_file"),
                              "`token_file` is no whole path; expected the name of a file that "
                              "begins with /, such as \"/etc/tidewright/panel-token\"",
                              "The token itself has no place in this file.");
  }
  if (from.told("address") != nullptr && !is_address(panel.address)) {
    draft.problems.add(from.at("address"),
                       fmt::format("`address` is \"{}\"; expected an address in numbers, such as "
                                   "\"127.0.0.1\" or \"::1\"",
                                   panel.address),
                       "A name by which browsers call the panel belongs in names.");
  }
  draft.household.panel = std::move(panel);
}

}  // namespace tidewright::config
