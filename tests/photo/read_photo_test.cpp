// Photographs from files: both kinds, the camera held in any way, and all that is none. The files are written by libjpeg
// and libpng here.
#include "photo/read_photo.h"

#include <algorithm>
#include <cstdlib>
#include <filesystem>

#include <catch2/catch.hpp>

#include "photo/encoded.h"
#include "photo/exif_orientation.h"
#include "temporary_folder.h"

using namespace laywright;
using namespace laywright::testing;
using Catch::Matchers::Contains;

namespace {

// Each pixel tells where it is, but for the compression.
GreyPhoto sloped(int width = 96, int height = 72) {
  GreyPhoto photo{width, height, {}};
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) photo.grey.push_back(static_cast<std::uint8_t>(x + 2 * y));
  }
  return photo;
}

int greatest_difference(const GreyPhoto& one, const GreyPhoto& other) {
  int most = 0;
  for (std::size_t i = 0; i < one.grey.size(); ++i) most = std::max(most, std::abs(one.grey[i] - other.grey[i]));
  return most;
}

int at(const GreyPhoto& photo, int x, int y) { return photo.grey[static_cast<std::size_t>(y * photo.width + x)]; }

// What a camera notes, with its numbers in either order of bytes.
std::string exif(char orientation, bool big) {
  const std::string plain = big ? std::string("MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0?\0\0\0\0\0\0", 26)
                                : std::string("II*\0\x08\0\0\0\x01\0\x12\x01\x03\0\x01\0\0\0?\0\0\0\0\0\0\0", 26);
  std::string notes = std::string("Exif\0\0", 6) + plain;
  notes[notes.find('?')] = orientation;
  return notes;
}

std::string trouble(const std::string& bytes) {
  const Result<GreyPhoto> read = decode_photo(bytes, "spool.jpg");
  REQUIRE_FALSE(read.ok());
  CHECK(read.issues()[0].file == "spool.jpg");
  return read.issues()[0].what;
}

}  // namespace

TEST_CASE("a photograph from JPEG and PNG, whatever its name") {
  const TemporaryFolder folder;
  const GreyPhoto photo = sloped();
  const Result<GreyPhoto> png = load_photo(folder.file("a.jpg", as_png(photo)));
  REQUIRE(png.ok());
  CHECK(png.value().width == 96);
  CHECK(png.value().height == 72);
  CHECK(png.value().grey == photo.grey);
  const Result<GreyPhoto> jpeg = load_photo(folder.file("a.png", as_jpeg(photo)));
  REQUIRE(jpeg.ok());
  CHECK(jpeg.value().width == 96);
  CHECK(greatest_difference(jpeg.value(), photo) <= 4);
}

TEST_CASE("a photograph is turned as the camera was held") {
  const GreyPhoto photo = sloped();
  // The file's first pixel is seen left or right, above or below, by the definition of each orientation.
  const int right_below[9][2] = {{0, 0}, {0, 0}, {1, 0}, {1, 1}, {0, 1}, {0, 0}, {1, 0}, {1, 1}, {0, 1}};
  for (int orientation = 1; orientation <= 8; ++orientation) {
    for (const bool big : {false, true}) {
      CAPTURE(orientation, big);
      const std::string notes = exif(static_cast<char>(orientation), big);
      CHECK(exif_orientation(notes) == orientation);
      const Result<GreyPhoto> read = decode_photo(as_jpeg(photo, 95, notes), "");
      REQUIRE(read.ok());
      const GreyPhoto& seen = read.value();
      const bool over = orientation >= 5;
      REQUIRE(seen.width == (over ? 72 : 96));
      const int x = right_below[orientation][0] != 0 ? seen.width - 1 : 0;
      const int y = right_below[orientation][1] != 0 ? seen.height - 1 : 0;
      CHECK(at(seen, x, y) <= 4);
      // A row of the file rises by 95, a column by 142.
      CHECK(std::abs(at(seen, seen.width - 1 - x, y) - (over ? 142 : 95)) <= 6);
    }
  }
  const std::string notes = exif(6, true);
  for (std::size_t length = 0; length < notes.size(); ++length) {
    const int told = exif_orientation(std::string_view(notes).substr(0, length));
    CHECK((told == 1 || told == 6));
  }
}

TEST_CASE("what is no photograph, or a damaged one, is refused in words") {
  CHECK_THAT(trouble("lay-plan 1"), Contains("neither a JPEG nor a PNG"));
  CHECK_THAT(trouble(""), Contains("neither a JPEG nor a PNG"));
  const std::string jpeg = as_jpeg(sloped()), png = as_png(sloped());
  for (std::size_t length = 8; length + 2 < jpeg.size(); length += jpeg.size() / 17) {
    CAPTURE(length);
    CHECK_THAT(trouble(jpeg.substr(0, length)), Contains("JPEG") && Contains("damaged or cut short"));
  }
  for (std::size_t length = 8; length + 20 < png.size(); length += png.size() / 17) {
    CAPTURE(length);
    CHECK_THAT(trouble(png.substr(0, length)), Contains("PNG") && Contains("damaged or cut short"));
  }
  std::string spoiled = png;
  spoiled[png.size() / 2] = static_cast<char>(spoiled[png.size() / 2] + 1);
  CHECK_THAT(trouble(spoiled), Contains("damaged"));
}

TEST_CASE("a photograph of a wrong size is refused before it is decoded") {
  CHECK_THAT(trouble(as_jpeg(sloped(32, 72))), Contains("32 x 72 pixels; at least 64"));
  // 60000 x 60000 in the header alone.
  std::string huge = as_png(sloped());
  for (const std::size_t side : {std::size_t{16}, std::size_t{20}})
    huge.replace(side, 4, std::string("\0\0\xEA\x60", 4));
  CHECK_THAT(trouble(huge), Contains("60000 x 60000") && Contains("make it smaller"));
  std::string wide = as_jpeg(sloped());
  const std::size_t frame = wide.find("\xFF\xC0");
  REQUIRE(frame != std::string::npos);
  wide.replace(frame + 5, 4, "\xEA\x60\xEA\x60");
  CHECK_THAT(trouble(wide), Contains("60000 x 60000"));
}

TEST_CASE("a photograph is a plain file of some size") {
  const TemporaryFolder folder;
  const Result<GreyPhoto> none = load_photo(folder.path() / "none.jpg");
  REQUIRE_FALSE(none.ok());
  CHECK_THAT(to_text(none.issues()[0]), Contains("none.jpg") && Contains("no such file"));
  CHECK_THAT(load_photo(folder.path()).issues()[0].what, Contains("is a folder"));
  CHECK_THAT(load_photo("/dev/zero").issues()[0].what, Contains("is a device"));
  const std::string large = folder.file("large.jpg", "");
  std::filesystem::resize_file(large, largest_photo_bytes + 1);
  CHECK_THAT(load_photo(large).issues()[0].what, Contains("larger than 100 MB"));
}
