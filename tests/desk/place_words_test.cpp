// Where the scrubber stands, and what is known of a turn, in words. An inch is 25.4 mm, a foot 304.8 mm.
#include "desk/place_words.h"

#include <memory>

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "model/wound.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

laywright::Wound shown(const char* name) {
  const Plan plan = testing::sample(name);
  const auto was = testing::wound(plan, 0.2);
  return {SceneSource(plan, std::make_shared<const Build>(was.build),
                      std::make_shared<const Measurements>(was.measured)),
          Pass{}, 0};
}

std::string value_of(const std::vector<Fact>& facts, const std::string& name) {
  for (const Fact& each : facts)
    if (each.name == name) return each.value;
  return "";
}

}  // namespace

TEST_CASE("the place of the scrubber is told in the person's units") {
  const laywright::Wound wound = shown("parallel");
  const double length = wound.build().length_mm;
  const Moment moment = moment_of(at_length(Playback{}, wound, 0.5 * length), wound);
  const MomentWords metric = moment_words(moment, wound, Units::metric),
                    inch = moment_words(moment, wound, Units::inch);
  CHECK(metric.length == fmt::format("{:.1f} m", 0.5 * length / 1000.0));
  CHECK(metric.of_length == fmt::format("{:.1f} m of {:.5g} m", 0.5 * length / 1000.0, length / 1000.0));
  CHECK_THAT(inch.length, Contains(" ft"));
  CHECK(metric.of_layers == fmt::format("layer {} of {}", moment.layer, wound.build().strokes.size()));
  CHECK(metric.turn == fmt::format("turn {:.1f}", moment.turn));
}

TEST_CASE("a turn is told alike whoever tells it") {
  const laywright::Wound wound = shown("parallel");
  const std::size_t node = wound.build().nodes.size() / 2;
  const NodeFacts f = facts_of(wound.source, node);
  const double d = wound.source.d();
  const std::vector<Fact> metric = turn_facts(f, d, Units::metric), inch = turn_facts(f, d, Units::inch);
  CHECK(value_of(metric, "Turn") == fmt::format("{:.3f}", f.turn));
  CHECK(value_of(metric, "Radius") == fmt::format("{:.3f} mm", f.r_mm));
  CHECK(value_of(inch, "Radius") == fmt::format("{:.5f} in", f.r_mm / 25.4));
  CHECK_THAT(value_of(metric, "Layer"), Contains("stroke to the"));
  CHECK(metric.size() == inch.size());
}

TEST_CASE("a rate has as many digits as one can use") {
  CHECK(rate_words(2.0) == "2x");
  CHECK(rate_words(0.015625) == "0.0156x");
  CHECK(rate_words(1250.0) == "1,250x");
}
