// The command: what it makes, what it refuses, and that nothing is left half written.
#include <catch2/catch.hpp>

#include <png.h>

#include <algorithm>

#include "app/program.h"
#include "render/picture_file.h"

namespace laywright {
namespace {

std::size_t files_in(const std::filesystem::path& folder) {
  std::size_t count = 0;
  for (const auto& entry : std::filesystem::directory_iterator(folder))
    count += entry.path().filename().string().starts_with(".std") ? 0U : 1U;
  return count;
}

// Pixels that are not the background's, which a PNG of frames has in its corner.
double drawn_share(const PictureFile& picture) {
  const auto differs = [](const Pixel& a, const Pixel& b) {
    return std::abs(a.r - b.r) + std::abs(a.g - b.g) + std::abs(a.b - b.b) > 60;
  };
  std::size_t drawn = 0;
  for (const Pixel& pixel : picture.pixels) drawn += differs(pixel, picture.at(0, 0)) ? 1U : 0U;
  return static_cast<double>(drawn) / static_cast<double>(picture.pixels.size());
}

}  // namespace

TEST_CASE("export writes each kind by its ending and says what it wrote") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  for (const char* const file : {"a.glb", "a.vtp", "a.csv", "a.svg", "a.png", "A.GLB"}) {
    const Ran ran = shop.run(std::string("$LW export a.lay.toml -o ") + file);
    INFO(ran.err);
    CHECK(ran.code == 0);
    CHECK(ran.out.find(std::string("Written: ") + file) == 0);
    CHECK(std::filesystem::file_size(shop.at(file)) > 1000);
  }
  CHECK(content(shop.at("a.glb")).substr(0, 4) == "glTF");
  CHECK(content(shop.at("a.csv")).find("turn,angle_deg") == 0);
}

TEST_CASE("export refuses what is not understood, with exit code 2, before anything is laid") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan(2'000'000));
  const auto refused = [&](const std::string& options, const std::string& words) {
    const Ran ran = shop.run("$LW export a.lay.toml " + options);
    INFO(options << ": " << ran.err);
    CHECK(ran.code == 2);
    CHECK(ran.err.find(words) != std::string::npos);
  };
  refused("", "-o FILE");
  refused("-o a.stl", ".glb, .vtp, .csv");
  refused("-o a.glb --show map", "always the same");
  refused("-o a.svg --show fill", "section or map");
  refused("-o a.csv --sides 5", "--sides");
  refused("-o a.glb --zoom 3", "moving pictures");
  refused("-o a.svg --dpi 100", "--dpi");
  refused("-o a.glb --sides 2", "--sides");
  refused("-o a.vtp --tolerance 5", "unit");
  CHECK(files_in(shop.at("")) == 1);
}

TEST_CASE("export refuses layers that the wind has not") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  for (const char* const file : {"a.glb", "a.vtp", "a.csv"}) {
    const Ran ran = shop.run(std::string("$LW export a.lay.toml --layers 70:80 -o ") + file);
    CHECK(ran.code == 2);
    CHECK(ran.err.find("this wind has") != std::string::npos);
  }
}

TEST_CASE("a failed export leaves what was there") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  shop.write("a.vtp", "old");
  const Ran large = shop.run("$LW export a.lay.toml -o a.vtp --at-most 0.1");
  CHECK(large.code == 3);
  CHECK(large.err.find("--tolerance") != std::string::npos);
  CHECK(large.err.find("--layers") != std::string::npos);
  CHECK(content(shop.at("a.vtp")) == "old");
  CHECK(shop.run("$LW export a.lay.toml -o no/such/folder/a.glb").code == 3);
  shop.write("broken.lay.toml", "format = \"lay-plan 1\"\n");
  CHECK(shop.run("$LW export broken.lay.toml -o a.vtp").code == 1);
  CHECK(content(shop.at("a.vtp")) == "old");
  CHECK(files_in(shop.at("")) == 3);
}

TEST_CASE("a table that would be too large is thinned, and says so") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  const Ran ran = shop.run("$LW export a.lay.toml -o a.csv --at-most 0.1");
  CHECK(ran.code == 0);
  CHECK(ran.out.find("one node in") != std::string::npos);
  CHECK(std::filesystem::file_size(shop.at("a.csv")) <= 100'000);
  CHECK(content(shop.at("a.csv")).find("# one node in") == 0);
}

TEST_CASE("the frames of a fill show ever more fiber, then stand still") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  const Ran ran = shop.run(
      "$LW export a.lay.toml --show fill --frames out/f --size 160x120 --fps 6 --seconds 2 --plain --view side "
      "--zoom 6 --colour layer");
  INFO(ran.err);
  REQUIRE(ran.code == 0);
  CHECK(files_in(shop.at("out/f")) == 12);
  const PictureFile first = read_png(shop.at("out/f/frame-0001.png"));
  const PictureFile late = read_png(shop.at("out/f/frame-0010.png")),
                    last = read_png(shop.at("out/f/frame-0012.png"));
  CHECK(first.width == 160);
  CHECK(first.height == 120);
  const auto coloured = [](const PictureFile& picture) {
    return std::count_if(picture.pixels.begin(), picture.pixels.end(),
                         [](const Pixel& pixel) { return layer_colour_at(pixel, 6) >= 0; });
  };
  CHECK(coloured(first) < coloured(late));
  CHECK(content(shop.at("out/f/frame-0010.png")) == content(shop.at("out/f/frame-0012.png")));
  CHECK(drawn_share(last) > 0.1);
}

TEST_CASE("a shorter animation is not mixed with the rest of a longer one") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  std::filesystem::create_directory(shop.at("f"));
  shop.write("f/frame-0009.png", "of another");
  const Ran ran = shop.run("$LW export a.lay.toml --frames f --size 64x64 --fps 4 --seconds 1");
  CHECK(ran.code == 3);
  CHECK(ran.err.find("frame-0009.png") != std::string::npos);
  CHECK(files_in(shop.at("f")) == 1);
}

TEST_CASE("a stopped export leaves nothing and returns 130") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  // Ten minutes of frames, were it not stopped.
  const Ran ran = shop.stopped("export a.lay.toml -o a.webp --frames f --size 1600x900 --fps 60 --seconds 60");
  INFO(ran.err);
  CHECK(ran.code == 130);
  CHECK(ran.err.find("nothing was written") != std::string::npos);
  CHECK(files_in(shop.at("")) == 1);
}

}  // namespace laywright
