#include "base/base64.h"

#include <catch2/catch.hpp>

using namespace laywright;

TEST_CASE("base64 by its test vectors, there and back") {
  // RFC 4648, section 10.
  const std::pair<const char*, const char*> vectors[] = {{"", ""},
                                                         {"f", "Zg=="},
                                                         {"fo", "Zm8="},
                                                         {"foo", "Zm9v"},
                                                         {"foob", "Zm9vYg=="},
                                                         {"fooba", "Zm9vYmE="},
                                                         {"foobar", "Zm9vYmFy"}};
  for (const auto& [bytes, text] : vectors) {
    CHECK(to_base64(bytes) == text);
    CHECK(from_base64(text) == bytes);
  }
  std::string all;
  for (int i = 0; i < 256; ++i) all += static_cast<char>(i);
  CHECK(from_base64(to_base64(all)) == all);
  for (const char* wrong : {"Z", "Zg", "Zg=", "Z===", "Zg==Zg==", "Zm9!", "=Zg=", "Zg=a"}) {
    CAPTURE(wrong);
    CHECK_FALSE(from_base64(wrong).has_value());
  }
}
