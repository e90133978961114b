// Signatures against the example that the specification's own libraries are tested with, and
// secrets as it allows them.
#include "daemon/post/signature.hpp"

#include <gtest/gtest.h>

namespace tidewright::post {
namespace {

// From memory of the Standard Webhooks project's tests; `openssl dgst -sha256 -mac HMAC` over the
// same bytes gives the same.
TEST(Signature, IsTheSpecificationsExample) {
  const auto key = signing_key("whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw");
  ASSERT_TRUE(key);
  EXPECT_EQ(
      signature(*key, "msg_p5jXN8AQM9LWM0D4loKWxJek", 1'614'265'330, R"({"test": 2432232314})"),
      "v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=");
}

TEST(Signature, DependsOnEveryPart) {
  const std::string key(32, 'k');
  const std::string right = signature(key, "a", 1, "b");
  EXPECT_NE(signature(std::string(32, 'l'), "a", 1, "b"), right);
  EXPECT_NE(signature(key, "b", 1, "b"), right);
  EXPECT_NE(signature(key, "a", 2, "b"), right);
  EXPECT_NE(signature(key, "a", 1, "c"), right);
}

TEST(Signature, ASecretIsAPrefixAndBase64OfEnoughBytes) {
  EXPECT_FALSE(signing_key(""));
  EXPECT_FALSE(signing_key("MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw"));
  EXPECT_FALSE(signing_key("whsec_"));
  EXPECT_FALSE(signing_key("whsec_c2hvcnQ="));  // "short"
  EXPECT_FALSE(signing_key("whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLa w"));
  EXPECT_FALSE(signing_key("whsec_" + std::string(92, 'A')));  // 69 bytes
  EXPECT_EQ(signing_key("whsec_" + std::string(32, 'A')), std::string(24, '\0'));
  // 25 and 26 bytes, with the padding that they need
  EXPECT_EQ(signing_key("whsec_" + std::string(34, 'A') + "==").value_or("").size(), 25u);
  EXPECT_EQ(signing_key("whsec_" + std::string(35, 'A') + "=").value_or("").size(), 26u);
}

}  // namespace
}  // namespace tidewright::post
