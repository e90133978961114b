#include "tests/support/receivers.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/support/broker.hpp"
#include "tests/support/certificates.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/eventually.hpp"

namespace tidewright::support {

Receivers::Receivers() : mail_port_(free_port()), submission_port_(free_port()) {
  const std::string& folder = directory_.path();
  const Authority authority(folder, "authority");
  authority.sign({"server", "IP:127.0.0.1"});
  write_file(folder + "/secret", "whsec_MDEyMzQ1Njc4OWFiY2RlZjAxMjM0NTY3ODlhYmNkZWY=\n");
  write_file(folder + "/password", "pass\n");
  process_ = std::make_unique<Process>(
      std::vector<std::string>{"/usr/bin/python3", source_file("tests/support/receivers.py"),
                               folder, std::to_string(mail_port_),
                               std::to_string(submission_port_)},
      folder + "/log");
  const bool up =
      eventually(Milliseconds{20'000}, [&] { return std::filesystem::exists(folder + "/ports"); });
  EXPECT_TRUE(up) << read_file(folder + "/log") << "is the package python3-aiosmtpd installed?";
  std::istringstream(up ? read_file(folder + "/ports") : "0") >> web_port_;
}

std::string Receivers::sections(const std::string& mail) const {
  return fmt::format(R"(
[webhook]
url = "https://127.0.0.1:{0}/water"
secret_file = "{1}/secret"
ca_file = "{1}/authority.pem"

[mail]
server = "{2}://127.0.0.1:{3}"
username = "room"
password_file = "{1}/password"
from = "waterroom@home.example"
to = ["ann@home.example", "bert@home.example"]
ca_file = "{1}/authority.pem"
)",
                     web_port_, directory_.path(), mail,
                     mail == "smtp" ? submission_port_ : mail_port_);
}

std::string Receivers::household(const std::string& mail) const {
  const std::string file = directory_.path() + "/household.toml";
  write_file(file, read_file(source_file("config/minimal.toml")) + sections(mail));
  return file;
}

std::vector<nlohmann::json> Receivers::received() const {
  std::vector<nlohmann::json> all;
  const std::string file = directory_.path() + "/received";
  if (!std::filesystem::exists(file)) return all;
  std::istringstream lines(read_file(file));
  for (std::string line; std::getline(lines, line);) {
    auto one = nlohmann::json::parse(line, nullptr, false);
    if (!one.is_discarded()) all.push_back(std::move(one));
  }
  return all;
}

std::vector<nlohmann::json> Receivers::await(const std::function<bool(const nlohmann::json&)>& fits,
                                             std::size_t count, Milliseconds bound) const {
  std::vector<nlohmann::json> fitting;
  eventually(bound, [&] {
    fitting = received();
    std::erase_if(fitting, [&](const nlohmann::json& one) { return !fits(one); });
    return fitting.size() >= count;
  });
  return fitting;
}

void Receivers::turn_away(const std::string& kind, const std::string& status) const {
  const std::string file = directory_.path() + "/" + kind;
  if (status.empty()) {
    std::filesystem::remove(file);
  } else {
    write_file(file, status);
  }
}

}  // namespace tidewright::support
