// The profile from a photograph on the command line. The photograph is rendered here.
#include <cmath>
#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "app/program.h"
#include "photo/encoded.h"
#include "photo/rendered_spool.h"

using namespace laywright;
using Catch::Matchers::Contains;
using Json = nlohmann::json;

namespace {

// The spool of small_plan, wound to 60 mm at the left and 64 mm at the right, on a smaller flange.
constexpr double flange_mm = 90.0, width_mm = 40.0;

std::string shop_plan(long turns = 60) {
  std::string plan = small_plan(turns);
  const auto replace = [&](const std::string& from, const std::string& to) {
    const std::size_t at = plan.find(from);
    REQUIRE(at != std::string::npos);
    plan.replace(at, from.size(), to);
  };
  replace("\"400 mm\"", "\"90 mm\"");
  replace("\"10 mm\"", "\"40 mm\"");
  return plan;
}

std::string photograph(double blur_px = 1.0) {
  testing::RenderedSpool spool;
  spool.flange_diameter_mm = flange_mm;
  spool.inside_width_mm = width_mm;
  spool.barrel_diameter_mm = 50.0;
  spool.diameter_mm = [](double x) { return 60.0 + 4.0 * x / width_mm; };
  testing::RenderedView view;
  view.width_px = 500, view.height_px = 700;
  view.distance_mm = 800.0, view.px_per_mm = 6.0, view.blur_px = blur_px;
  return testing::as_jpeg(testing::rendered(spool, view));
}

}  // namespace

TEST_CASE("profile: a photograph beside its plan, as text, JSON and tables") {
  const Workshop shop;
  shop.write("a.lay.toml", shop_plan());
  shop.write("a.jpg", photograph());
  const Ran text = shop.run("$LW profile a.lay.toml a.jpg --distance \"0.8 m\" --csv a.csv --measured m.csv");
  CAPTURE(text.err);
  REQUIRE(text.code == 0);
  CHECK_THAT(text.out, Contains("at the end of the wind") && Contains("800 mm, as given") &&
                           Contains("not corrected; bends the flanges' outer edges by") && Contains("left") &&
                           Contains("An estimate"));
  CHECK_THAT(content(shop.at("a.csv")), Contains("x_mm,diameter_mm,sigma_mm,planned_mm\n"));
  CHECK_THAT(content(shop.at("m.csv")), Contains("end,"));

  const Ran json = shop.run("$LW profile a.lay.toml a.jpg --json --layer 1");
  REQUIRE(json.code == 0);
  const Json told = Json::parse(json.out);
  CHECK(told.at("format") == "lay-profile 1");
  // The central half of a cone from 60 to 64 mm.
  CHECK(told.at("outer_diameter").at("middle").at("diameter").get<double>() == Approx(62.0).margin(0.15));
  // A layer on a barrel of 50 mm.
  CHECK(told.at("outer_diameter").at("middle").at("planned").get<double>() == Approx(51.0).margin(0.02));
  CHECK(std::abs(told.at("camera").at("lens_bend_px").get<double>()) <
        2.0 * told.at("camera").at("lens_sigma_px").get<double>());
  CHECK(told.at("camera").at("lens_off") == 0.0);
  const Ran shaped = shop.run("$LW profile a.lay.toml a.jpg --json --shaped-flanges");
  REQUIRE(shaped.code == 0);
  CHECK(Json::parse(shaped.out).at("camera").at("lens_bend_px").is_null());
  CHECK(told.at("when") == "when layer 1 has ended");
  REQUIRE(shop.run("$LW profile a.lay.toml a.jpg --turns 55 --measured turns.csv").code == 0);
  CHECK_THAT(content(shop.at("turns.csv")), Contains("55"));
  // Drawn over the build's, at the end and when a layer has ended.
  REQUIRE(shop.run("$LW profile a.lay.toml a.jpg --picture a.svg").code == 0);
  CHECK_THAT(content(shop.at("a.svg")), Contains("<svg"));
  REQUIRE(shop.run("$LW profile a.lay.toml a.jpg --picture a.png --layer 1").code == 0);
  CHECK(content(shop.at("a.png")).substr(1, 3) == "PNG");
  CHECK(shop.run("$LW profile a.lay.toml a.jpg --picture a.gif").code == 2);
  // What it writes, others read.
  CHECK(shop.run("$LW record add a.lay.toml --spool-number 1 --records r.db --measured m.csv").code == 0);
  CHECK_THAT(shop.run("$LW record show 1 --records r.db").out, Contains("end, diameter, middle"));
}

TEST_CASE(
    "profile: at the end of the wind the plan's figures are those of its last layer, too, and of its outline") {
  const Workshop shop;
  shop.write("a.lay.toml", shop_plan(135));  // the second layer ends before the left flange
  shop.write("a.jpg", photograph());
  const Ran json = shop.run("$LW profile a.lay.toml a.jpg --json");
  REQUIRE(json.code == 0);
  const Json told = Json::parse(json.out);
  const double middle = told.at("outer_diameter").at("middle").at("planned").get<double>();
  CHECK(middle > 51.7);  // one layer alone: 51
  double sum = 0.0;
  int places = 0;
  for (const Json& place : told.at("profile")) {
    const double share = place.at("x").get<double>() / width_mm;
    if (share < 0.25 || share > 0.75) continue;
    sum += place.at("planned").get<double>();
    ++places;
  }
  REQUIRE(places > 50);
  CHECK(sum / places == Approx(middle).margin(0.01));
  CHECK_THAT(shop.run("$LW profile a.lay.toml a.jpg").out, Contains("The build's last layer is not whole: layer 2"));
}

TEST_CASE("profile: what is refused is said with the picture's name") {
  const Workshop shop;
  shop.write("a.lay.toml", shop_plan());
  shop.write("blurred.jpg", photograph(6.0));
  const Ran blurred = shop.run("$LW profile a.lay.toml blurred.jpg");
  CHECK(blurred.code == 1);
  CHECK_THAT(blurred.err, Contains("blurred.jpg") && Contains("too blurred"));
  const Ran none = shop.run("$LW profile a.lay.toml a.lay.toml");
  CHECK(none.code == 1);
  CHECK_THAT(none.err, Contains("neither a JPEG nor a PNG"));
  for (const char* distance : {"5 mm", "1500", "far"}) {
    const Ran ran = shop.run("$LW profile a.lay.toml blurred.jpg --distance \"" + std::string(distance) + "\"");
    CHECK(ran.code == 2);
    CHECK_THAT(ran.err, Contains("--distance"));
  }
  CHECK(shop.run("$LW profile a.lay.toml blurred.jpg --csv a.lay.toml").code == 2);
  CHECK(shop.run("$LW profile a.lay.toml blurred.jpg --layer 1 --turns 5").code == 2);
}
