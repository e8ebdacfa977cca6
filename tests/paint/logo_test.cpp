// A logo is drawn anew, and what could be more than a picture is refused. The hostile files are made up here.
#include "paint/logo.h"

#include <catch2/catch.hpp>

#include "paint/png.h"
#include "temporary_folder.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

// Half clear red, multiplied by its opacity.
Image red(int width, int height) {
  Image image{width, height, {}};
  for (int i = 0; i < width * height; ++i) image.bytes.insert(image.bytes.end(), {128, 0, 0, 128});
  return image;
}

std::string svg(const std::string& inside, const std::string& attributes = "") {
  return "<?xml version=\"1.0\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" "
         "xmlns:xlink=\"http://www.w3.org/1999/xlink\" viewBox=\"0 0 40 20\" " +
         attributes + ">\n" + inside + "\n</svg>\n";
}

Issue refused(const std::string& bytes) {
  const Result<Image> logo = logo_from(bytes, "mark.svg");
  REQUIRE_FALSE(logo.ok());
  CHECK(logo.issues().front().file == "mark.svg");
  return logo.issues().front();
}

// Red, green, blue and opacity.
std::array<int, 4> pixel(const Image& image, int x, int y) {
  const std::size_t at =
      4 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(image.width) + static_cast<std::size_t>(x));
  return {image.bytes[at], image.bytes[at + 1], image.bytes[at + 2], image.bytes[at + 3]};
}

}  // namespace

TEST_CASE("a PNG becomes the picture that it shows, and nothing else of it") {
  std::string bytes = to_png(red(30, 20));
  // A chunk of text before the end (PNG specification, 11.3.4.3; its checksum by Python's zlib.crc32), and what is behind it.
  const std::string chunk("\0\0\0\x0dtEXtComment\0<svg>\xb0\x37\x51\x63", 25);
  bytes.insert(bytes.size() - 12, chunk);
  bytes += "<script>alert(1)</script>";
  const Result<Image> logo = logo_from(bytes, "a.png");
  REQUIRE(logo.ok());
  CHECK(logo.value().width == 30);
  CHECK(logo.value().height == 20);
  CHECK(pixel(logo.value(), 15, 10) == std::array<int, 4>{128, 0, 0, 128});
  const std::string anew = to_png(logo.value());
  CHECK(anew.find("script") == std::string::npos);
  CHECK(anew.find("Comment") == std::string::npos);
}

TEST_CASE("a logo comes as large as it is drawn") {
  const Result<Image> logo = logo_from(to_png(red(2000, 1000)), "a.png");
  REQUIRE(logo.ok());
  CHECK(logo.value().width == 800);
  CHECK(logo.value().height == 400);
  CHECK(pixel(logo.value(), 400, 200) == std::array<int, 4>{128, 0, 0, 128});
}

TEST_CASE("a PNG of too many pixels is refused before it is unpacked, and a damaged one is told") {
  std::string bytes = to_png(red(8, 8));
  std::string huge = bytes;
  huge[18] = '\x7f';  // the third byte of the width
  CHECK_THAT(refused(huge).what, Contains("too many pixels"));
  CHECK(refused(huge).value == "32520 x 8 pixels");
  CHECK(refused(huge).allowed == "up to 4096 by 4096");
  CHECK_THAT(refused(bytes.substr(0, bytes.size() / 2)).what, Contains("damaged"));
  CHECK_THAT(refused(bytes.substr(0, 12)).what, Contains("damaged"));
  char& packed = bytes[bytes.find("IDAT") + 7];
  packed = static_cast<char>(packed ^ 0x55);
  CHECK_THAT(refused(bytes).what, Contains("damaged"));
}

TEST_CASE("what is no picture is no logo, and neither is a large file") {
  CHECK(refused("GIF89a").allowed == "PNG or SVG");
  CHECK(refused("").allowed == "PNG or SVG");
  CHECK(refused("<!doctype html><html></html>").allowed == "PNG or SVG");
  const testing::TemporaryFolder folder;
  const std::string large = folder.file("large.png", to_png(red(8, 8)) + std::string(largest_logo_bytes, 'x'));
  const Result<Image> logo = read_logo(large);
  REQUIRE_FALSE(logo.ok());
  CHECK(logo.issues().front().file == large);
  CHECK_FALSE(read_logo(large + ".none").ok());
  CHECK(read_logo(folder.file("a.png", to_png(red(8, 8)))).ok());
}

TEST_CASE("an SVG is rendered to pixels, as large as may be") {
  const Result<Image> logo =
      logo_from(svg("<defs><g id=\"half\"><rect width=\"20\" height=\"20\" fill=\"#00ff00\"/></g></defs>"
                    "<use xlink:href=\"#half\"/><!-- on purpose = a mark -->"),
                "a.svg");
  REQUIRE(logo.ok());
  CHECK(logo.value().width == 800);
  CHECK(logo.value().height == 400);
  CHECK(pixel(logo.value(), 200, 200) == std::array<int, 4>{0, 255, 0, 255});
  CHECK(pixel(logo.value(), 600, 200) == std::array<int, 4>{0, 0, 0, 0});
}

TEST_CASE("an SVG with a script, or that reaches out of itself, is refused, and it is told where") {
  const Issue script = refused(svg("<script>alert(1)</script>"));
  CHECK_THAT(script.what, Contains("a script"));
  CHECK(script.line == 3);
  for (const char* inside :
       {"<SCRIPT/>", "<svg:script/>", "<a href='javascript:alert(1)'/>", "<image href=\"https://a.invalid/a.png\"/>",
        "<image xlink:href = 'file:///etc/hostname'/>", "<image href=\"data:image/png;base64,AAAA\"/>",
        "<use href=\"other.svg#a\"/>", "<rect fill=\"url(http://a.invalid/a.svg#b)\"/>",
        "<style>@import 'a.css';</style>", "<style>rect { fill: url( \"a.svg#b\" ) }</style>",
        "<foreignObject><p/></foreignObject>", "<rect onload=\"alert(1)\"/>", "<rect fill='red'onclick = 'a()'/>",
        "<rect/onload='a()'/>", "<a xml:base='http://a.invalid/'/>", "<text>&#60;script&#62;</text>"}) {
    CAPTURE(inside);
    CHECK_THAT(refused(svg(inside)).what, Contains("this SVG has"));
  }
  CHECK_THAT(refused("<!DOCTYPE svg [<!ENTITY a SYSTEM \"file:///etc/hostname\">]>" + svg("<text>&a;</text>")).what,
             Contains("document type"));
  CHECK_THAT(refused("<?xml-stylesheet href='a.css'?>" + svg("")).what, Contains("style sheet"));
  CHECK_THAT(refused(svg("<rect>")).what, Contains("damaged"));
}
