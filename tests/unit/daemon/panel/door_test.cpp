#include "daemon/panel/door.hpp"

#include <gtest/gtest.h>

namespace tidewright::panel {
namespace {

const std::vector<std::string> names{"water.home"};

int status(std::string_view host, std::string_view origin = {}, std::string_view method = "GET") {
  return refused({method, host, origin, 1}, names).status;
}

TEST(PanelDoor, KnowsAddressesInNumbersLocalhostAndTheNamesItWasTold) {
  for (const char* host : {"127.0.0.1:8321", "127.0.0.1", "192.168.7.20:8321", "[::1]:8321",
                           "localhost:8321", "LOCALHOST", "water.home:8321", "Water.Home"}) {
    EXPECT_EQ(status(host), 0) << host;
  }
}

// DNS rebinding: a stranger's name that was made to point here. RFC 9110, 15.5.20: 421.
TEST(PanelDoor, KnowsNoOtherName) {
  for (const char* host : {"", "evil.example", "evil.example:8321", "127.0.0.1.evil.example",
                           "water.home.evil.example", "localhost.evil.example", "[evil]", "[::1",
                           "1.2.3", "127.0.0.1@evil.example", "water.home "}) {
    EXPECT_EQ(status(host), 421) << host;
  }
}

TEST(PanelDoor, AnswersItsOwnPagesOnly) {
  EXPECT_EQ(status("127.0.0.1:8321", "http://127.0.0.1:8321"), 0);
  EXPECT_EQ(status("water.home", "https://water.home"), 0);
  for (const char* origin : {"http://evil.example", "null", "http://127.0.0.1:80", "127.0.0.1:8321",
                             "http://127.0.0.1:8321.evil.example"}) {
    EXPECT_EQ(status("127.0.0.1:8321", origin), 403) << origin;
  }
}

TEST(PanelDoor, IsOnlyToBeLookedThrough) {
  for (const char* method : {"POST", "PUT", "DELETE", "OPTIONS", "TRACE", "get"}) {
    EXPECT_EQ(status("127.0.0.1", {}, method), 405) << method;
  }
  EXPECT_EQ(status("127.0.0.1", {}, "HEAD"), 0);
  EXPECT_EQ(refused({"GET", "127.0.0.1", "", 5000}, names).status, 414);
}

// OWASP, Cross-Site Request Forgery Prevention: the origin is checked where something is changed.
TEST(PanelDoor, TakesAFormOnlyFromAPageOfItsOwn) {
  const auto post = [](std::string_view origin, std::string_view method = "POST") {
    return refused({method, "water.home:8321", origin, 1, true}, names).status;
  };
  EXPECT_EQ(post("http://water.home:8321"), 0);
  EXPECT_EQ(post("https://water.home:8321"), 0);
  for (const char* origin : {"", "null", "http://water.home", "http://evil.example",
                             "http://water.home:8321.evil.example", "water.home:8321"}) {
    EXPECT_EQ(post(origin), 403) << origin;
  }
  EXPECT_EQ(post("http://water.home:8321", "PUT"), 405);
  EXPECT_EQ(post("", "GET"), 0);
}

}  // namespace
}  // namespace tidewright::panel
