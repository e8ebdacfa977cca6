#include "desk/wound_bytes.h"

#include <cstring>
#include <limits>

#include <catch2/catch.hpp>

#include "figures/json.h"
#include "model/wound.h"

using namespace laywright;

namespace {

// A wind that has findings of several kinds, and steps.
Plan eventful() {
  PlanDraft draft = testing::sample("tapered-flanges").draft();
  draft.wind.length_mm.reset();
  draft.wind.diameter_mm.reset();
  draft.wind.turns = 900.0;
  const Result<Plan> plan = check(draft);
  REQUIRE(plan.ok());
  return plan.value();
}

bool same_bits(const std::vector<double>& a, const std::vector<double>& b) {
  return a.size() == b.size() && std::memcmp(a.data(), b.data(), a.size() * sizeof(double)) == 0;
}

}  // namespace

TEST_CASE("a build comes back from its bytes as it was, to the last bit") {
  const Plan plan = eventful();
  const testing::Wound was = testing::wound(plan, 0.3);
  REQUIRE_FALSE(was.measured.findings.empty());
  const std::vector<std::uint8_t> bytes = to_bytes(was.build, was.measured);
  const auto received = from_bytes(bytes.data(), bytes.size(), was.build.nodes.columns());
  REQUIRE(received);
  const Build& build = received->build;
  const Measurements& measured = received->measurements;

  CHECK(build.hash() == was.build.hash());
  CHECK(build.seed == was.build.seed);
  CHECK(build.stopped_by == was.build.stopped_by);
  CHECK(build.fiber_diameter_mm == was.build.fiber_diameter_mm);
  REQUIRE(build.nodes.size() > 1000);
  for (std::size_t k = 0; k < build.nodes.size(); k += 97) {
    CHECK(build.nodes.x(k) == was.build.nodes.x(k));
    CHECK(build.nodes.r(k) == was.build.nodes.r(k));
  }
  // The document holds every figure that is printed, with the digits that make out a double.
  CHECK(to_json(plan, build, measured) == to_json(plan, was.build, was.measured));
}

TEST_CASE("what the document leaves out comes back as well") {
  const testing::Wound was = testing::wound(eventful(), 0.3);
  const std::vector<std::uint8_t> bytes = to_bytes(was.build, was.measured);
  const auto received = from_bytes(bytes.data(), bytes.size(), was.build.nodes.columns());
  REQUIRE(received);
  const Measurements& measured = received->measurements;

  CHECK(same_bits(measured.surface.x_mm, was.measured.surface.x_mm));
  CHECK(same_bits(measured.surface.mean_mm, was.measured.surface.mean_mm));
  CHECK(same_bits(measured.surface.least_mm, was.measured.surface.least_mm));
  CHECK(same_bits(measured.surface.greatest_mm, was.measured.surface.greatest_mm));
  REQUIRE(measured.layers.size() == was.measured.layers.size());
  for (std::size_t i = 0; i < measured.layers.size(); ++i) {
    CHECK(measured.layers[i].outer_diameter_mm == was.measured.layers[i].outer_diameter_mm);
    CHECK(measured.layers[i].flange_gap_length_mm == was.measured.layers[i].flange_gap_length_mm);
    const auto &edges = measured.layers[i].edges, &were = was.measured.layers[i].edges;
    REQUIRE(edges.has_value() == were.has_value());
    for (std::size_t side = 0; edges && side < 2; ++side) {
      CHECK((*edges)[side].ridge_mm == (*were)[side].ridge_mm);
      CHECK((*edges)[side].valley_mm == (*were)[side].valley_mm);
    }
  }
  REQUIRE(measured.findings.size() == was.measured.findings.size());
  for (std::size_t i = 0; i < measured.findings.size(); ++i) {
    CHECK(measured.findings[i].severity == was.measured.findings[i].severity);
    const auto& places = measured.findings[i].places;
    const auto& were = was.measured.findings[i].places;
    REQUIRE(places.size() == were.size());
    for (std::size_t k = 0; k < places.size(); ++k) {
      CHECK(places[k].first_node == were[k].first_node);
      CHECK(places[k].end_node == were[k].end_node);
      CHECK(places[k].node == were[k].node);
      CHECK(places[k].size_mm == were[k].size_mm);
    }
  }
}

TEST_CASE("bytes that are not of this build are refused") {
  const testing::Wound was = testing::wound(eventful(), 0.2);
  std::vector<std::uint8_t> bytes = to_bytes(was.build, was.measured);
  const NodeStore::Columns& columns = was.build.nodes.columns();

  CHECK_FALSE(from_bytes(bytes.data(), 0, columns));
  CHECK_FALSE(from_bytes(bytes.data(), bytes.size() / 2, columns));
  NodeStore::Columns short_of_one = columns;
  short_of_one.r.pop_back();
  CHECK_FALSE(from_bytes(bytes.data(), bytes.size(), short_of_one));
  // No damage to a byte ends in anything but a refusal or a build.
  for (std::size_t at = 0; at < bytes.size(); at += 7) {
    const std::uint8_t before = std::exchange(bytes[at], static_cast<std::uint8_t>(bytes[at] ^ 0x55U));
    CHECK_NOTHROW(from_bytes(bytes.data(), bytes.size(), columns));
    bytes[at] = before;
  }
}

TEST_CASE("a fiber that never slips, and numbers at their ends, travel too") {
  testing::Wound was = testing::wound(eventful(), 0.2);
  was.measured.fill_factor = std::numeric_limits<double>::denorm_min();
  was.measured.rim_clearance_mm = -std::numeric_limits<double>::max();
  was.measured.wind_time_s.reset();
  const std::vector<std::uint8_t> bytes = to_bytes(was.build, was.measured);
  const auto received = from_bytes(bytes.data(), bytes.size(), was.build.nodes.columns());
  REQUIRE(received);
  CHECK(received->measurements.fill_factor == was.measured.fill_factor);
  CHECK(received->measurements.rim_clearance_mm == was.measured.rim_clearance_mm);
  CHECK_FALSE(received->measurements.wind_time_s);
}
