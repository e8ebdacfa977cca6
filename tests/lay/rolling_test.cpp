// How a round fiber rolls, on surfaces simple enough for closed forms (all derived, MODEL.md, "A round fiber rolls").
#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "lay/string_window.h"
#include "lay/torsion.h"
#include "plans.h"
#include "usual_fiber.h"

using namespace laywright;
using laywright::testing::usual::d;
using laywright::testing::usual::radius;

namespace {

constexpr int stations = 480;
constexpr double angle = 2.0 * std::numbers::pi / stations;

// A cone whose barrel falls to the right; at stations outside [from, to) two circles below it make a groove at x = 0 that
// only just reaches above it.
std::vector<Section> cone_with_grooves(double slope, int from, int to) {
  std::vector<Section> sections;
  for (int i = 0; i < stations; ++i) {
    Section section(d, {radius, -slope}, {-100.0, 0.0}, {100.0, 0.0});
    if (i < from || i >= to) {
      const double aside = 0.6 * d;
      const double below = std::sqrt(d * d - aside * aside) - 1e-7;
      section.insert(-aside, radius - below, 0);
      section.insert(aside, radius - below, 0);
    }
    sections.push_back(section);
  }
  return sections;
}

struct Wound {
  std::vector<Section> sections;
  StringWindow window;
  Wound(std::vector<Section> on, double friction, Rolling rolling)
      : sections(std::move(on)), window(sections, friction, angle, 360, 0.0, 1e-7 * d, rolling) {}
};

// How far the middle of a stretch of n nodes goes, wound straight along x = 0.
double middle_goes(double slope, int n, double friction, double stiffness) {
  Rolling rolling;
  rolling.stiffness = stiffness;
  rolling.reach = 340;
  const int from = 100;
  Wound wound(cone_with_grooves(slope, from, from + n), friction, rolling);
  for (int k = 0; k < 340; ++k) wound.window.add(0.0, 0, {0.0, HUGE_VAL});
  return wound.window.node(static_cast<std::size_t>(from + n / 2)).rest.x;
}

}  // namespace

// q l^2 / (8 (K + T)) with q = (T / R) times the slope: the parabola of a string of tension K + T.
TEST_CASE("a stretch held at both ends rolls aside like a string of tension K + T") {
  for (const double k : {0.0, 5.0, 40.0}) {
    for (const int n : {20, 40, 60}) {
      const double slope = 0.02;  // so that the ends hold
      const double length = (n + 1) * angle * radius;
      const double expected = slope / radius * length * length / (8.0 * (1.0 + k));
      INFO("k " << k << ", nodes " << n);
      // A node that would move by less than the least step stays: a few thousandths of d short where it is stiff.
      CHECK(middle_goes(slope, n, 0.5, k) == Approx(expected).epsilon(0.05));
    }
  }
}

TEST_CASE("what does not roll stays as long as its slope is below friction, and slides beyond") {
  CHECK(middle_goes(0.2, 60, 0.3, HUGE_VAL) == Approx(0.0).margin(1e-9));
  CHECK(middle_goes(0.2, 60, 0.1, HUGE_VAL) > 0.01);
  // So stiff a fiber cannot roll, only slide: the same places.
  CHECK(middle_goes(0.2, 60, 0.3, 1e9) == Approx(0.0).margin(1e-6));
  CHECK(middle_goes(0.2, 60, 0.1, 1e9) == Approx(middle_goes(0.2, 60, 0.1, HUGE_VAL)).epsilon(0.01));
}

// A stretch on the crown of a turn falls when it is longer than pi sqrt((1 + k) d R), and not when it is shorter.
TEST_CASE("a stretch on top of a turn falls when it is longer than the critical length") {
  for (const double k : {3.0, 10.0}) {
    const double critical = critical_length_mm(k, d, radius) / (angle * radius);
    for (const double share : {0.7, 1.4}) {
      const int n = static_cast<int>(share * critical);
      const int from = 60;
      std::vector<Section> sections;
      for (int i = 0; i < stations; ++i) {
        Section section(d, {radius, 0.0}, {-100.0, 0.0}, {100.0, 0.0});
        const bool stretch = i >= from && i < from + n;
        // Off the crown by a hundredth of d: no tie.
        if (stretch) section.insert(-0.01 * d, radius, 0);
        if (!stretch) {
          section.insert(-0.5 * d, radius + (1.0 - std::sqrt(0.75)) * d, 0);
          section.insert(0.5 * d, radius + (1.0 - std::sqrt(0.75)) * d, 0);
        }
        sections.push_back(section);
      }
      Rolling rolling;
      rolling.stiffness = k;
      rolling.reach = 340;
      Wound wound(sections, 0.9, rolling);
      for (int j = 0; j < 350; ++j) wound.window.add(0.0, 0, {0.0, HUGE_VAL});
      const double x = wound.window.node(static_cast<std::size_t>(from + n / 2)).rest.x;
      INFO("k " << k << ", " << share << " of the critical length: " << x / d << " d");
      CHECK((x > 0.3 * d) == (share > 1.0));
    }
  }
}

// tan(fleet angle) = sqrt(2 dE / R), dE the whole climb from valley to crest: friction does not help the fiber to stay on
// the way that it has climbed, where it can roll back.
TEST_CASE("a groove holds a fiber that rolls to the fleet angle of the whole climb") {
  std::vector<Section> sections;
  for (int i = 0; i < stations; ++i) {
    Section section(d, {radius, 0.0}, {-100.0, 0.0}, {100.0, 0.0});
    for (int turn = -20; turn <= 20; ++turn) section.insert(turn * d, radius, 0);
    sections.push_back(section);
  }
  Rolling rolling;
  rolling.stiffness = 0.0;
  rolling.reach = 100;
  StringWindow window(sections, 0.3, angle, 360, 0.0, 1e-6 * d, rolling);
  constexpr double free_length = 400.0;
  const double groove = 0.5 * d;
  double guide = groove;
  double escaped = 0.0;
  window.add(groove, 0, {});
  for (int k = 1; k < 150 * stations && escaped == 0.0; ++k) {
    guide += 3e-4 * free_length * angle / (2.0 * std::numbers::pi);
    const Resting& tip = window.last().rest;
    const double stays = std::exp(-angle * tip.r / free_length);
    window.add(guide + (tip.x - guide) * stays, 0, {guide, (1.0 - stays) / stays});
    if (window.last().rest.x > groove + d) escaped = (guide - groove) / free_length;
  }
  const double whole_climb = (1.0 - std::sqrt(0.75)) * d;
  const double expected = std::sqrt(2.0 * whole_climb / (radius + std::sqrt(0.75) * d));
  CHECK(escaped == Approx(expected).epsilon(0.12));
}

// J = pi c^4 / 32, K = 4 G J / d^2. Copper 0.5 mm thick at 5 N on 100 mm: K about 4.5 kN, a turn and a half; glass of
// 125 um in 0.25 mm at 0.5 N on 150 mm: 47 N, 130 mm (worked by hand).
TEST_CASE("the stiffness against twist comes from what the plan says of the fiber") {
  PlanDraft draft = testing::plain_draft();
  draft.wind.tension_N = 0.5;
  draft.fiber.core_diameter_mm = 0.125;
  const Torsion glass = torsion_of(testing::sound(draft));
  CHECK(glass.modulus_assumed);
  CHECK_FALSE(glass.core_assumed);
  CHECK_FALSE(glass.tension_assumed);
  CHECK(glass.stiffness_N == Approx(47.5).epsilon(0.01));
  CHECK(critical_length_mm(glass.over_tension(), 0.25, 75.0) == Approx(132.0).epsilon(0.02));
  CHECK(slip_length_mm(glass.over_tension(), 0.25, 75.0, 0.5) == Approx(59.0).epsilon(0.02));

  draft.fiber.modulus_MPa = 72e3;
  draft.fiber.poisson = 0.16;
  CHECK(torsion_of(testing::sound(draft)).stiffness_N == Approx(glass.stiffness_N).epsilon(0.002));
  draft.fiber.shear_modulus_MPa = 62e3;
  CHECK(torsion_of(testing::sound(draft)).stiffness_N == Approx(2.0 * glass.stiffness_N).epsilon(1e-12));

  PlanDraft copper = testing::plain_draft();
  copper.fiber.diameter_mm = 0.5;
  copper.traverse.pitch_mm = 0.52;
  copper.fiber.core_diameter_mm = 0.5;
  copper.fiber.shear_modulus_MPa = 45e3;
  copper.wind.tension_N = 5.0;
  const Torsion wire = torsion_of(testing::sound(copper));
  CHECK(wire.stiffness_N == Approx(4418.0).epsilon(0.01));
  CHECK(critical_length_mm(wire.over_tension(), 0.5, 50.0) / (2.0 * std::numbers::pi * 50.0) ==
        Approx(1.5).epsilon(0.02));

  // Nothing said: as the glass fiber above, whatever the size.
  PlanDraft bare = testing::plain_draft();
  const Torsion assumed = torsion_of(testing::sound(bare));
  CHECK((assumed.modulus_assumed && assumed.core_assumed && assumed.tension_assumed));
  CHECK(assumed.over_tension() == Approx(0.25 * 31.0 / 72.0 / (2.0 * 6e-4)).epsilon(1e-9));
}

// R T / (E A): glass of 125 um at 0.5 N on 150 mm, 75 * 0.5 / (72e3 * 0.01227) mm; a yarn of 0.25 mm that a pull of 20 N would
// double in length, 75 * 0.5 / 20 mm (worked by hand).
TEST_CASE("a turn of a soft fiber sinks by more than half its diameter before it is slack") {
  PlanDraft draft = testing::plain_draft();
  draft.wind.tension_N = 0.5;
  draft.fiber.core_diameter_mm = 0.125;
  draft.fiber.modulus_MPa = 72e3;
  const auto slack = [&] { return slack_depth_mm(testing::sound(draft), torsion_of(testing::sound(draft))); };
  const auto soft = [&] { return is_soft(testing::sound(draft), torsion_of(testing::sound(draft))); };
  CHECK(slack() == Approx(0.0424).epsilon(0.005));
  CHECK_FALSE(soft());
  draft.fiber.core_diameter_mm = 0.25;
  draft.fiber.modulus_MPa = 20.0 / (std::numbers::pi / 4.0 * 0.25 * 0.25);
  CHECK(slack() == Approx(1.875));
  CHECK(soft());
  // Of a fiber that the plan says nothing of, nothing is said.
  draft.wind.tension_N.reset();
  CHECK_FALSE(soft());
}

TEST_CASE("a flat fiber, one that is held and one without friction do not roll") {
  PlanDraft draft = testing::plain_draft();
  CHECK(torsion_of(testing::sound(draft)).rolls);
  draft.fiber.section = FiberSection::flat;
  CHECK_FALSE(torsion_of(testing::sound(draft)).rolls);
  draft.fiber.section = FiberSection::round;
  for (const double friction : {0.0, Fiber::held}) {
    draft.fiber.friction = friction;
    CHECK_FALSE(torsion_of(testing::sound(draft)).rolls);
  }
}

// K to infinity is the law of what does not roll; K to zero the law without friction on a single contact.
TEST_CASE("between its limits a fiber's rolling gives the builds of both") {
  PlanDraft draft = testing::plain_draft();
  draft.spool.inside_width_mm = 20.0;
  draft.wind.turns = 400.0;
  draft.fiber.friction = 0.7;
  draft.wind.tension_N = 0.5;
  draft.fiber.core_diameter_mm = 0.125;
  const auto share_in_valleys = [](const Build& build) {
    std::size_t count = 0;
    for (std::size_t k = 0; k < build.nodes.size(); ++k)
      count += build.nodes.support(k) == Support::valley ? 1U : 0U;
    return static_cast<double>(count) / static_cast<double>(build.nodes.size());
  };
  draft.fiber.shear_modulus_MPa = 1e7;
  draft.wind.tension_N = 1e-3;
  const double stiff = share_in_valleys(testing::laid(draft));
  draft.fiber.section = FiberSection::flat;
  const double flat = share_in_valleys(testing::laid(draft));
  draft.fiber.section = FiberSection::round;
  draft.fiber.shear_modulus_MPa = 1e-3;
  draft.wind.tension_N = 0.5;
  const double soft = share_in_valleys(testing::laid(draft));
  draft.fiber.friction = 0.02;
  draft.fiber.section = FiberSection::flat;
  const double slippery = share_in_valleys(testing::laid(draft));
  INFO("in valleys: stiff " << stiff << ", flat " << flat << ", soft " << soft << ", without friction " << slippery);
  CHECK(flat < 0.2);
  CHECK(stiff == Approx(flat).margin(0.02));
  CHECK(soft > 0.75);
  CHECK(soft == Approx(slippery).margin(0.1));
}
