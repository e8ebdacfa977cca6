#include <string>

#include <catch2/catch.hpp>

#include "base/png_header.h"

using namespace laywright;

TEST_CASE("a PNG's head tells its size before anything is unpacked") {
  // 258 x 3 pixels, written by hand after the PNG specification (W3C), 5.2 and 11.2.2; the checksum is not looked at.
  const std::string png("\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR\0\0\x01\x02\0\0\0\x03\x08\x06\0\0\0____", 33);
  REQUIRE(png_size(png));
  CHECK((*png_size(png))[0] == 258);
  CHECK((*png_size(png))[1] == 3);
  CHECK(is_png(png));
  CHECK_FALSE(png_size(png.substr(0, 32)));
  std::string other = png;
  other[15] = 'X';
  CHECK_FALSE(png_size(other));
  CHECK(is_png(other));
  other[1] = 'Q';
  CHECK_FALSE(is_png(other));
  CHECK_FALSE(is_png(""));
}
