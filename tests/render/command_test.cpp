// The command itself: what it refuses, and that it leaves nothing half done.
#include <catch2/catch.hpp>

#include "render/picture_file.h"

using namespace laywright;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

TEST_CASE("the same plan gives the same picture, of the size asked for") {
  const Workshop shop;
  shop.write("a.lay.toml", spool_plan(40.0));
  REQUIRE(shop.run("$LW picture a.lay.toml -o one.png --size 321x203 && "
                   "$LW picture a.lay.toml -o two.png --size 321x203")
              .code == 0);
  CHECK(content(shop.at("one.png")) == content(shop.at("two.png")));
  const PictureFile picture = read_png(shop.at("one.png"));
  CHECK(picture.width == 321);
  CHECK(picture.height == 203);
}

TEST_CASE("without graphics the command says what to install, ends with 3, and replaces nothing") {
  const Workshop shop;
  shop.write("a.lay.toml", spool_plan(40.0));
  shop.write("a.png", "mine");
  const Ran ran = shop.run(
      "__EGL_VENDOR_LIBRARY_DIRS=/nowhere __EGL_VENDOR_LIBRARY_FILENAMES=/nowhere/none.json "
      "$LW picture a.lay.toml -o a.png");
  CHECK(ran.code == 3);
  CHECK_THAT(ran.err, Contains("no picture can be drawn") && Contains("libegl1"));
  CHECK(content(shop.at("a.png")) == "mine");
}

TEST_CASE("what is wrong is told by its exit code and in words") {
  const Workshop shop;
  shop.write("a.lay.toml", spool_plan(40.0));
  shop.write("bad.lay.toml", "format = \"lay-plan 1\"\n");
  CHECK(shop.run("$LW picture bad.lay.toml -o a.png").code == 1);
  CHECK(shop.run("$LW picture a.lay.toml -o nowhere/a.png").code == 3);
  for (const char* options :
       {"", "-o a.png --size 12", "-o a.png --size 10x10", "-o a.png --cut 30", "-o a.png --layers 3:1",
        "-o a.png --until fast", "-o a.png --until '-3 m'", "-o a.png --view behind", "-o a.png --colour blue",
        "-o a.png --cut 0:90 --section 20", "-o a.png --layers 7:9", "-o a.png --finding 999"}) {
    CAPTURE(options);
    const Ran ran = shop.run("$LW picture a.lay.toml " + std::string(options));
    CHECK(ran.code == 2);
    CHECK_FALSE(ran.err.empty());
  }
  CHECK_FALSE(fs::exists(shop.at("a.png")));
}

TEST_CASE("until takes a turn and a length, and shows less wind") {
  const Workshop shop;
  shop.write("a.lay.toml", spool_plan(60.0));
  const std::string options = " --plain --transparent --view side --colour layer --size 400x300";
  REQUIRE(shop.run("$LW picture a.lay.toml -o turn.png --until 9" + options).code == 0);
  REQUIRE(shop.run("$LW picture a.lay.toml -o length.png --until '1.43 m'" + options).code == 0);
  REQUIRE(shop.run("$LW picture a.lay.toml -o whole.png --until 18" + options).code == 0);
  const auto first_layer = [&](const char* file) { return layer_colours_in(read_png(shop.at(file)), 4)[0]; };
  // 1.43 m are nine turns of pi (50 + 0.5) mm.
  CHECK(first_layer("turn.png") > 1000);
  CHECK(std::abs(first_layer("turn.png") - first_layer("length.png")) < 0.05 * first_layer("turn.png"));
  CHECK(first_layer("whole.png") > 1.6 * first_layer("turn.png"));
}

TEST_CASE("two winds stand beside one another in one picture, on one scale") {
  const Workshop shop;
  shop.write("a.lay.toml", spool_plan(40.0));
  shop.write("b.lay.toml", spool_plan(90.0));
  const std::string options = " --plain --colour length --size 800x300";
  const auto half = [](const PictureFile& picture, int from) {
    std::vector<std::array<std::uint8_t, 3>> pixels;
    for (int y = 0; y < picture.height; ++y)
      for (int x = from; x < from + 398; ++x)
        pixels.push_back({picture.at(x, y).r, picture.at(x, y).g, picture.at(x, y).b});
    return pixels;
  };
  REQUIRE(shop.run("$LW picture a.lay.toml --beside a.lay.toml -o same.png" + options).code == 0);
  REQUIRE(shop.run("$LW picture a.lay.toml --beside b.lay.toml -o both.png" + options).code == 0);
  REQUIRE(shop.run("$LW picture b.lay.toml --beside a.lay.toml -o changed.png" + options).code == 0);
  const PictureFile same = read_png(shop.at("same.png")), both = read_png(shop.at("both.png")),
                    changed = read_png(shop.at("changed.png"));
  REQUIRE(both.width == 800);
  CHECK(half(same, 0) == half(same, 402));
  // A wind looks alike on either side of the same other one; beside a longer one its end has a lower colour than alone.
  CHECK(half(both, 0) == half(changed, 402));
  CHECK(half(both, 402) == half(changed, 0));
  CHECK(half(both, 0) != half(same, 0));
  CHECK(shop.run("$LW picture a.lay.toml b.lay.toml --beside a.lay.toml -o folder").code == 2);
  CHECK(shop.run("$LW picture a.lay.toml --beside none.lay.toml -o a.png").code == 1);
  CHECK(shop.run("$LW picture a.lay.toml --beside b.lay.toml -o b.lay.toml").code == 2);
}
