#include "tests/support/secured_broker.hpp"

#include <stdexcept>

#include "tests/support/daemon_process.hpp"

namespace tidewright::support {

SecuredBroker::SecuredBroker(const Door& door)
    : authority_(directory_.path(), "authority"),
      port_(free_port()),
      broker_(std::make_unique<Broker>("set_tcp_nodelay true\n" + settings(door))) {
  if (!listening(port_, Milliseconds{5'000})) {
    throw std::runtime_error("mosquitto has no encrypted door: " + broker_->log());
  }
}

std::string SecuredBroker::settings(const Door& door) const {
  const Certified server =
      door.self_signed ? self_signed(directory_.path(), door.server) : authority_.sign(door.server);
  std::string lines = "listener " + std::to_string(port_) + " 127.0.0.1\ncafile " +
                      authority_.certificate_file() + "\ncertfile " + server.certificate_file +
                      "\nkeyfile " + server.key_file + "\n" + door.further + "\n";
  if (door.user.empty()) {
    lines += "allow_anonymous true\n";
  } else {
    const std::string passwords = file("passwords", "");
    Process made({"/usr/bin/mosquitto_passwd", "-b", passwords, door.user, door.password},
                 directory_.path() + "/log");
    if (made.wait(Milliseconds{5'000}) != 0) throw std::runtime_error("no mosquitto_passwd");
    lines += "allow_anonymous false\npassword_file " + passwords + "\n";
  }
  if (!door.access.empty()) lines += "acl_file " + file("access", door.access) + "\n";
  return lines;
}

std::string SecuredBroker::file(const std::string& name, const std::string& text) const {
  std::string path = directory_.path() + "/" + name;
  write_file(path, text);
  return path;
}

std::string SecuredBroker::household(const std::string& lines) const {
  std::string text = read_file(source_file("config/minimal.toml"));
  const std::string plain = "uri = \"mqtt://127.0.0.1:1883\"";
  const std::string ours =
      "uri = \"" + uri() + "\"\nca_file = \"" + authority_.certificate_file() + "\"\n" + lines;
  text.replace(text.find(plain), plain.size(), ours);
  return file("household.toml", text);
}

}  // namespace tidewright::support
