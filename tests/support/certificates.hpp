// Certificates of a test's own, in PEM files: an authority, and what it signs.
#pragma once

#include <string>

namespace tidewright::support {

struct Certified {
  std::string certificate_file;
  std::string key_file;
};

struct Wish {
  std::string file;      // its name, without the ending; what it is called in the certificate
  std::string names;     // "DNS:cellar,IP:127.0.0.1", as OpenSSL writes subjectAltName
  bool expired = false;  // yesterday; else it begins yesterday and is good for 30 days
};

class Authority {
 public:
  // Writes <name>.pem into `directory`, where all that it signs goes too.
  Authority(std::string directory, const std::string& name);

  const std::string& certificate_file() const { return own_.certificate_file; }
  Certified sign(const Wish& wish) const;

 private:
  std::string directory_;
  Certified own_;
};

// A certificate that is signed by its own key.
Certified self_signed(const std::string& directory, const Wish& wish);

}  // namespace tidewright::support
