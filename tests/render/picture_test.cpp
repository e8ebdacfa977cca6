// What the shipped command draws, judged by what must be true of the picture. Each property is also held against a
// picture of something else, where it must fail.
#include <algorithm>
#include <optional>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "render/picture_file.h"

using namespace laywright;

namespace {

const std::string drawing = "--view side --parallel --plain --transparent --size 800x600 ";

// Opaque pixels of a column.
int extent_of_column(const PictureFile& picture, int x) {
  int count = 0;
  for (int y = 0; y < picture.height; ++y) count += picture.at(x, y).a > 127 ? 1 : 0;
  return count;
}

// Seen square to the axis without perspective, the flanges give the scale: the wind's silhouette between them, mm, and
// the size of a pixel.
struct Silhouette {
  double wound_mm = 0.0, px_mm = 0.0;
};
Silhouette silhouette_of(const PictureFile& picture, double rim_mm) {
  int rim_px = 0;
  // Of the right flange: on the left one a mark stands out at the start of angles.
  for (int x = picture.width / 2; x < picture.width; ++x) rim_px = std::max(rim_px, extent_of_column(picture, x));
  const double px_mm = rim_mm / rim_px;
  // Mean of the central half: the measured diameter is that of the crests over it.
  const int half_width = static_cast<int>(2.5 / px_mm);
  double sum = 0.0;
  const int reach = static_cast<int>(0.25 / px_mm);  // half a fiber: from any place to a crest
  for (int x = picture.width / 2 - half_width; x < picture.width / 2 + half_width; ++x) {
    int crest = 0;
    for (int near = x - reach; near <= x + reach; ++near) crest = std::max(crest, extent_of_column(picture, near));
    sum += crest;
  }
  return {sum / (2 * half_width) * px_mm, px_mm};
}

bool shows_diameter(const PictureFile& picture, double diameter_mm) {
  const Silhouette seen = silhouette_of(picture, 70.0);
  UNSCOPED_INFO("seen " << seen.wound_mm << " expected " << diameter_mm << " pixel " << seen.px_mm);
  return std::abs(seen.wound_mm - diameter_mm) <= seen.px_mm;
}

// Share of the pixels whose layer colour is not that of the other picture mirrored.
double unlike_mirrored(const PictureFile& a, const PictureFile& b) {
  int unlike = 0, coloured = 0;
  for (int y = 0; y < a.height; ++y)
    for (int x = 0; x < a.width; ++x) {
      const int one = layer_colour_at(a.at(x, y), 4), other = layer_colour_at(b.at(b.width - 1 - x, y), 4);
      if (one < 0 || other < 0) continue;
      ++coloured;
      unlike += one != other ? 1 : 0;
    }
  REQUIRE(coloured > 10'000);
  return static_cast<double>(unlike) / coloured;
}

}  // namespace

TEST_CASE("the silhouette of the wind is its outer diameter, within a pixel") {
  const Workshop shop;
  const std::string plan = spool_plan(90.0);
  const PictureFile picture = picture_of(shop, plan, drawing);
  const Ran laid = shop.run("$LW lay plan.lay.toml --json");
  const double middle_mm = nlohmann::json::parse(laid.out).at("totals").at("outer_diameter").at("middle");
  CHECK(shows_diameter(picture, middle_mm));
  CHECK_FALSE(shows_diameter(picture_of(shop, spool_plan(90.0, "left", 50.5), drawing), middle_mm));
}

TEST_CASE("the colour of a layer is seen where it is peeled, and nowhere else") {
  const Workshop shop;
  const std::string plan = spool_plan(100.0);
  const auto shows_only_first = [](const PictureFile& picture) {
    const auto counts = layer_colours_in(picture, 6);
    return counts[0] > 20'000 && counts[1] == 0 && counts[2] == 0;
  };
  CHECK(shows_only_first(picture_of(shop, plan, drawing + "--layers 1:1")));
  CHECK_FALSE(shows_only_first(picture_of(shop, plan, drawing + "--layers 1:2")));
  CHECK_FALSE(shows_only_first(picture_of(shop, plan, drawing)));
}

TEST_CASE("a wedge cut lays the layers below open") {
  const Workshop shop;
  const std::string plan = spool_plan(100.0), near = "--plain --transparent --size 1000x700 ";
  const auto shows_inside = [](const PictureFile& picture) {
    const auto counts = layer_colours_in(picture, 6);
    return counts[0] > 300 && counts[1] > 300 && counts[2] > 300 && counts[3] > 300;
  };
  CHECK(shows_inside(picture_of(shop, plan, near + "--cut 30:110")));
  CHECK_FALSE(shows_inside(picture_of(shop, plan, near)));
  // A cut on the far side shows nothing.
  CHECK_FALSE(shows_inside(picture_of(shop, plan, near + "--cut 210:290")));
}

TEST_CASE("a mirrored plan gives the mirrored picture") {
  const Workshop shop;
  // The fourth layer is half laid, so that left and right differ.
  const PictureFile left = picture_of(shop, spool_plan(64.0, "left"), drawing);
  const PictureFile right = picture_of(shop, spool_plan(64.0, "right"), drawing);
  CHECK(unlike_mirrored(left, right) < 0.01);
  CHECK(unlike_mirrored(left, left) > 0.2);
}

TEST_CASE("a transparent picture has no ground, and any other is opaque") {
  const Workshop shop;
  const PictureFile clear = picture_of(shop, spool_plan(40.0), "--transparent --plain --size 400x300");
  CHECK(clear.at(2, 2).a == 0);
  const auto opaque = [](const PictureFile& picture) {
    return std::all_of(picture.pixels.begin(), picture.pixels.end(),
                       [](const Pixel& pixel) { return pixel.a == 255; });
  };
  CHECK_FALSE(opaque(clear));
  CHECK(opaque(picture_of(shop, spool_plan(40.0), "--size 400x300")));
  const PictureFile light = picture_of(shop, spool_plan(40.0), "--size 400x300 --plain");
  const PictureFile dark = picture_of(shop, spool_plan(40.0), "--size 400x300 --plain --dark");
  CHECK(light.at(2, 2).g > 200);
  CHECK(dark.at(2, 2).g < 70);
}

TEST_CASE("from far away no moire shows: a wind of one colour stays smooth") {
  const Workshop shop;
  // How much pixels differ from the middle of their neighbours along a row of the wind: only the turns do that.
  const auto roughness = [](const PictureFile& picture) {
    double sum = 0.0;
    int count = 0;
    for (int y = picture.height / 2 - 5; y <= picture.height / 2 + 5; ++y)
      for (int x = picture.width / 2 - 4; x <= picture.width / 2 + 4; ++x, ++count)
        sum += std::abs(picture.at(x - 1, y).r - 2 * picture.at(x, y).r + picture.at(x + 1, y).r);
    return sum / count;
  };
  const std::string far_away = "--plain --colour direction --layers 1:1 --view side --size ";
  CHECK(roughness(picture_of(shop, spool_plan(18.0), far_away + "140x120")) < 5.0);
  // Close by, the same measure finds the turns.
  CHECK(roughness(picture_of(shop, spool_plan(18.0), far_away + "700x600")) > 10.0);
}
