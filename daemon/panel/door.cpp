#include "daemon/panel/door.hpp"

#include <arpa/inet.h>

#include <algorithm>
#include <array>

namespace tidewright::panel {
namespace {

constexpr std::size_t target_longest = 256;

bool is_address(int family, std::string_view text) {
  std::array<unsigned char, sizeof(in6_addr)> bytes{};
  return inet_pton(family, std::string(text).c_str(), bytes.data()) == 1;
}

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool same(std::string_view a, std::string_view b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](char x, char y) { return lower(x) == lower(y); });
}

// Without its port.
std::string_view name_of(std::string_view host) {
  if (host.starts_with('[')) {
    const std::size_t end = host.find(']');
    return end == host.npos ? std::string_view{} : host.substr(1, end - 1);
  }
  return host.substr(0, host.find(':'));
}

// An address in numbers is nobody's to rebind.
bool is_known(std::string_view host, const std::vector<std::string>& names) {
  const std::string_view name = name_of(host);
  if (host.starts_with('[')) return is_address(AF_INET6, name);
  if (is_address(AF_INET, name) || same(name, "localhost")) return true;
  return std::any_of(names.begin(), names.end(),
                     [&](const std::string& known) { return same(name, known); });
}

}  // namespace

Refused refused(const Caller& caller, const std::vector<std::string>& names) {
  if (caller.target_size > target_longest) return {414, "The address is too long."};
  const bool writes = caller.method == "POST" && caller.may_write;
  if (caller.method != "GET" && caller.method != "HEAD" && !writes) {
    return {405, "This can only be looked at."};
  }
  if (!is_known(caller.host, names)) {
    return {421,
            "The panel is not known by this name. Call it by its address in numbers, or write the "
            "name into `names` in [panel]."};
  }
  const std::string host(caller.host);
  // Every browser says where a form comes from; who does not is none, or hides it.
  if (writes && caller.origin.empty()) return {403, "The form does not say where it comes from."};
  if (!caller.origin.empty() && !same(caller.origin, "http://" + host) &&
      !same(caller.origin, "https://" + host)) {
    return {403, "The panel answers its own pages only."};
  }
  return {};
}

}  // namespace tidewright::panel
