// A web server and a mail server to which the daemon tells its announcements: real ones, in a
// process of their own (receivers.py), with a certificate of a test's own.
#pragma once

#include <functional>
#include <memory>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "tests/support/process.hpp"

namespace tidewright::support {

class Receivers {
 public:
  // Started at once; fails the test if they do not come up.
  Receivers();

  // The sections of a household's file by which it tells them everything. `mail`: "smtps" or
  // "smtp", then with STARTTLS.
  std::string sections(const std::string& mail = "smtps") const;
  // A household's file that is config/minimal.toml and those.
  std::string household(const std::string& mail = "smtps") const;

  // What has arrived so far, each with `way`, `id` and what is told of it in receivers.py.
  std::vector<nlohmann::json> received() const;
  // Waits until so many have arrived that `fits`; those.
  std::vector<nlohmann::json> await(const std::function<bool(const nlohmann::json&)>& fits,
                                    std::size_t count, Milliseconds bound) const;
  // The web server ("web") or the mail server ("mail") answers with that status from now on;
  // empty: takes everything.
  void turn_away(const std::string& kind, const std::string& status) const;
  const std::string& directory() const { return directory_.path(); }

 private:
  TemporaryDirectory directory_;
  int web_port_ = 0, mail_port_ = 0, submission_port_ = 0;
  std::unique_ptr<Process> process_;
};

}  // namespace tidewright::support
