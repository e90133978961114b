// One exchange with a server by libcurl, with the patience and the strictness that all of them
// have: certificates are checked, no redirection is followed, half a minute and no longer.
#pragma once

#include <curl/curl.h>

#include <string>

namespace tidewright::courier {

class Transfer {
 public:
  Transfer(const std::string& url, const std::string& ca_file);
  ~Transfer();
  Transfer(const Transfer&) = delete;
  Transfer& operator=(const Transfer&) = delete;

  CURL* handle() { return handle_; }
  // Another line of the head.
  void add_head(const std::string& line);

  struct Result {
    CURLcode code = CURLE_OK;
    long status = 0;   // the server's last: of HTTP or of SMTP; 0: it gave none
    std::string said;  // what is wrong, or the beginning of the server's answer
  };
  Result run();

 private:
  static std::size_t hear(char* bytes, std::size_t size, std::size_t count, void* heard);

  CURL* handle_;
  curl_slist* head_ = nullptr;
  std::string heard_;
  char error_[CURL_ERROR_SIZE] = {};
};

}  // namespace tidewright::courier
