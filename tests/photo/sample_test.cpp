// The sample's photograph is rendered, here: no camera took it. With LAYWRIGHT_WRITE_SAMPLE set it is written anew.
#include <cmath>
#include <cstdlib>
#include <fstream>

#include <catch2/catch.hpp>

#include "photo/edge_profile.h"
#include "photo/encoded.h"
#include "photo/rendered_spool.h"
#include "plan/plan_file.h"

using namespace laywright;
using namespace laywright::testing;

TEST_CASE("the sample's photograph is what is rendered of its spool, and gives its profile") {
  // That of samples/even.lay.toml, as far out as its build, whose last layer ends on the way, but with a ridge at the left
  // flange.
  constexpr double middle_mm = 157.4, last_layer_mm = 0.45, last_layer_ends_mm = 74.1;
  RenderedSpool spool;
  spool.diameter_mm = [](double x) {
    return middle_mm - (x > last_layer_ends_mm ? last_layer_mm : 0.0) + 1.2 * std::exp(-x / 5.0);
  };
  spool.shaft_diameter_mm = 20.0;
  RenderedView view;
  view.width_px = view.height_px = 1000;
  view.px_per_mm = 3.6, view.distance_mm = 3000.0, view.tilt_deg = 1.2, view.uneven = 0.3;
  const GreyPhoto photo = rendered(spool, view);
  const std::string file = LAYWRIGHT_SOURCE_DIR "/samples/even-rendered.jpg";
  if (std::getenv("LAYWRIGHT_WRITE_SAMPLE") != nullptr) std::ofstream(file, std::ios::binary) << as_jpeg(photo, 80);
  const Result<GreyPhoto> sample = load_photo(file);
  REQUIRE(sample.ok());
  REQUIRE(sample.value().grey.size() == photo.grey.size());
  double off = 0.0;
  for (std::size_t i = 0; i < photo.grey.size(); ++i) off += std::abs(photo.grey[i] - sample.value().grey[i]);
  CHECK(off / static_cast<double>(photo.grey.size()) < 3.0);

  const Result<Plan> plan = load_plan(LAYWRIGHT_SOURCE_DIR "/samples/even.lay.toml");
  REQUIRE(plan.ok());
  const Result<EdgeProfile> profile = edge_profile(sample.value(), plan.value(), {view.distance_mm});
  REQUIRE(profile.ok());
  const std::size_t middle = profile.value().x_mm.size() / 2;
  CHECK(profile.value().diameter_mm[middle] == Approx(middle_mm).margin(0.15));
}
