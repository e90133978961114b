// One HTTP connection to a loopback port, byte by byte as a test wants it.
#pragma once

#include <chrono>
#include <string>

namespace tidewright::support {

class WebClient {
 public:
  explicit WebClient(int port);
  ~WebClient();
  WebClient(const WebClient&) = delete;
  WebClient& operator=(const WebClient&) = delete;

  // False if the other side does not take it.
  bool send(const std::string& bytes);
  // Reads until `enough` stands in what came, the other side ends, or `bound` is over.
  // Returns all that came so far.
  const std::string& read_until(const std::string& enough, std::chrono::milliseconds bound);
  // Whether the other side has ended the connection within `bound`.
  bool ended(std::chrono::milliseconds bound);

 private:
  bool read_some(std::chrono::milliseconds bound);  // false: nothing more comes
  int fd_;
  bool ended_ = false;
  std::string came_;
};

// The whole answer, with its head, to a request that is whole.
std::string ask_web(int port, const std::string& request);
// The same to GET, with the further header lines given, each closed by "\r\n".
std::string get_page(int port, const std::string& path, const std::string& headers = {});
// The same to a form that one of the server's own pages sends; `form`: as it is encoded in a body.
std::string post_form(int port, const std::string& path, const std::string& form,
                      const std::string& headers = {});

}  // namespace tidewright::support
