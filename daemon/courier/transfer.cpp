#include "daemon/courier/transfer.hpp"

#include <algorithm>

namespace tidewright::courier {
namespace {

constexpr long connected_within_s = 10;
constexpr long done_within_s = 30;
constexpr std::size_t heard_most = 200;

// "… after 3 ms: …": the same trouble is said in the same words each time.
std::string without_times(std::string text) {
  const std::size_t from = text.find(" after ");
  const std::size_t to = text.find(" ms", from == text.npos ? 0 : from);
  if (from != text.npos && to != text.npos) text.erase(from, to + 3 - from);
  return text;
}

}  // namespace

Transfer::Transfer(const std::string& url, const std::string& ca_file) : handle_(curl_easy_init()) {
  curl_easy_setopt(handle_, CURLOPT_URL, url.c_str());
  curl_easy_setopt(handle_, CURLOPT_PROTOCOLS_STR, "http,https,smtp,smtps");
  curl_easy_setopt(handle_, CURLOPT_USERAGENT, "tidewright");
  curl_easy_setopt(handle_, CURLOPT_NOSIGNAL, 1L);
  curl_easy_setopt(handle_, CURLOPT_NOPROXY, "*");
  curl_easy_setopt(handle_, CURLOPT_CONNECTTIMEOUT, connected_within_s);
  curl_easy_setopt(handle_, CURLOPT_TIMEOUT, done_within_s);
  curl_easy_setopt(handle_, CURLOPT_ERRORBUFFER, &error_[0]);
  curl_easy_setopt(handle_, CURLOPT_WRITEFUNCTION, &Transfer::hear);
  curl_easy_setopt(handle_, CURLOPT_WRITEDATA, &heard_);
  if (!ca_file.empty()) {
    curl_easy_setopt(handle_, CURLOPT_CAINFO, ca_file.c_str());
    curl_easy_setopt(handle_, CURLOPT_CAPATH, nullptr);
  }
}

Transfer::~Transfer() {
  curl_easy_cleanup(handle_);
  curl_slist_free_all(head_);
}

void Transfer::add_head(const std::string& line) { head_ = curl_slist_append(head_, line.c_str()); }

// What the server says further is taken and forgotten.
std::size_t Transfer::hear(char* bytes, std::size_t size, std::size_t count, void* heard) {
  auto& text = *static_cast<std::string*>(heard);
  text.append(bytes, std::min(size * count, heard_most - std::min(heard_most, text.size())));
  return size * count;
}

Transfer::Result Transfer::run() {
  curl_easy_setopt(handle_, CURLOPT_HTTPHEADER, head_);
  Result result;
  result.code = curl_easy_perform(handle_);
  curl_easy_getinfo(handle_, CURLINFO_RESPONSE_CODE, &result.status);
  if (result.code != CURLE_OK) {
    result.said = without_times(error_[0] != '\0' ? error_ : curl_easy_strerror(result.code));
  } else {
    result.said = heard_;
  }
  return result;
}

}  // namespace tidewright::courier
