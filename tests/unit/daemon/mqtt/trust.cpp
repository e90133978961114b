#include "daemon/mqtt/trust.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <openssl/ssl.h>

namespace tidewright::mqtt {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

// A line that stood and was given up.
Tapped stood() {
  Tapped tapped;
  tapped.tls_begun = true;
  tapped.peer_showed_certificate = true;
  return tapped;
}

TEST(TlsTrouble, IsNoneBeforeSomebodyTookTheConnection) {
  EXPECT_THAT(tls_trouble(Tapped{}, Access{}), IsEmpty());
}

// The alert's number: RFC 8446, section 6.2.
TEST(TlsTrouble, IsTheBrokersOwnWord) {
  Tapped tapped = stood();
  tapped.alert = 116;
  EXPECT_THAT(tls_trouble(tapped, Access{}),
              HasSubstr("the broker seems to want a certificate of ours"));
}

TEST(TlsTrouble, IsAGuessWhereTheBrokersWordWasLostWithTheLine) {
  EXPECT_THAT(tls_trouble(stood(), Access{}),
              HasSubstr("the broker seems to want a certificate of ours: give certificate_file"));
  Access access;
  access.certificate_file = "/etc/tidewright/client.pem";
  EXPECT_THAT(tls_trouble(stood(), access), HasSubstr("look at certificate_file"));
}

}  // namespace
}  // namespace tidewright::mqtt
