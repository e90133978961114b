#include "daemon/mqtt/access.hpp"

#include <gtest/gtest.h>

namespace tidewright::mqtt {
namespace {

Access good(const std::string& uri) {
  config::Broker broker;
  broker.uri = uri;
  return std::get<Access>(access(broker));
}

// Default ports: IANA's registry, mqtt 1883 and secure-mqtt 8883.
TEST(Access, SpeaksTheLibrarysWords) {
  EXPECT_EQ(good("mqtt://cellar").uri, "tcp://cellar:1883");
  EXPECT_EQ(good("mqtt://127.0.0.1:1884/").uri, "tcp://127.0.0.1:1884");
  EXPECT_EQ(good("mqtts://cellar").uri, "ssl://cellar:8883");
  EXPECT_EQ(good("mqtt://[::1]").uri, "tcp://[::1]:1883");
  EXPECT_EQ(good("mqtt://[::1]:1884").uri, "tcp://[::1]:1884");
  EXPECT_TRUE(good("mqtts://cellar").tls);
  EXPECT_FALSE(good("mqtt://cellar").tls);
  EXPECT_EQ(good("mqtts://cellar").address, "mqtts://cellar:8883");
}

TEST(Access, KnowsForWhomTheCertificateMustBe) {
  EXPECT_EQ(good("mqtts://cellar").host, "cellar");
  EXPECT_EQ(good("mqtts://cellar:1884").host, "cellar");
  EXPECT_EQ(good("mqtts://10.0.0.7:1884/").host, "10.0.0.7");
  EXPECT_EQ(good("mqtts://[::1]").host, "::1");
  EXPECT_EQ(good("mqtts://[::1]:1884").host, "::1");
}

TEST(Access, SaysWhatIsWrong) {
  config::Broker broker;
  broker.uri = "http://cellar";
  EXPECT_NE(std::get<std::string>(access(broker)).find("http://cellar"), std::string::npos);
  broker.uri = "mqtt://cellar";
  broker.password_file = "/nowhere/password";
  EXPECT_NE(std::get<std::string>(access(broker)).find("/nowhere/password"), std::string::npos);
  broker = {};
  broker.uri = "mqtts://cellar";
  broker.ca_file = "/nowhere/ca.pem";
  EXPECT_NE(std::get<std::string>(access(broker)).find("/nowhere/ca.pem"), std::string::npos);
}

}  // namespace
}  // namespace tidewright::mqtt
