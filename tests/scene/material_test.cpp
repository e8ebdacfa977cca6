// What spool and fiber look like: as the plan says, or as a product of its kind does.
#include <catch2/catch.hpp>

#include "plan/mixed_colour.h"
#include "scene/palette.h"
#include "scenes.h"

using namespace laywright;
using scenes::source_of;

namespace {

PlanDraft wire(double modulus_MPa) {
  PlanDraft draft = synthetic::draft();
  draft.fiber.core_diameter_mm = 0.9;
  draft.fiber.modulus_MPa = modulus_MPa;
  return draft;
}

std::string name_of(const PlanDraft& draft) { return fiber_material(synthetic::plan_of(draft)).name; }

}  // namespace

TEST_CASE("without a look, fiber looks as its kind does") {
  CHECK(name_of(synthetic::draft()) == "coated fiber");
  CHECK(name_of(wire(117'000.0)) == "enamelled wire");
  CHECK(name_of(wire(200'000.0)) == "steel");
  PlanDraft bare = wire(117'000.0);
  bare.fiber.core_diameter_mm = 1.0;
  CHECK(name_of(bare) == "copper");
  // Copper of .9 mm weighs 8.9 g/cm^3 times .636 mm^2, 5.66 kg/km; steel 4.99.
  PlanDraft heavy = wire(117'000.0);
  heavy.fiber.modulus_MPa.reset();
  heavy.fiber.linear_mass_g_per_km = 5'660.0;
  CHECK(name_of(heavy) == "enamelled wire");
  heavy.fiber.linear_mass_g_per_km = 4'990.0;
  CHECK(name_of(heavy) == "steel");
  // Glass of .5 mm under a coating.
  PlanDraft glass = synthetic::draft();
  glass.fiber.core_diameter_mm = 0.5;
  glass.fiber.modulus_MPa = 72'000.0;
  CHECK(name_of(glass) == "coated fiber");
  PlanDraft soft = synthetic::draft();
  soft.fiber.modulus_MPa = 3'000.0;
  CHECK(name_of(soft) == "yarn");
}

TEST_CASE("a look and a colour that the plan has are those of the picture") {
  PlanDraft draft = synthetic::draft();
  draft.fiber.look = FiberLook::glass;
  const Material glass = fiber_material(synthetic::plan_of(draft));
  CHECK(glass.name == "bare glass");
  CHECK(glass.sheen.clear == 1.0F);
  draft.fiber.look = FiberLook::copper;
  const Material copper = fiber_material(synthetic::plan_of(draft));
  CHECK(copper.sheen.metal == 1.0F);
  // Copper is of the colour of copper, red before green before blue.
  CHECK(copper.colour.r > copper.colour.g + 40);
  CHECK(copper.colour.g > copper.colour.b);
  draft.fiber.colour = FiberColour::blue;  // of bare metal there is nothing to colour
  CHECK(fiber_material(synthetic::plan_of(draft)).colour == copper.colour);
  draft.fiber.look = FiberLook::coated;
  const Material blue = fiber_material(synthetic::plan_of(draft));
  CHECK(blue.name == "coated fiber, blue");
  CHECK(blue.colour.b > blue.colour.r + 60);
  draft.fiber.colour = *mixed_colour("#C0392b");
  const Material mixed = fiber_material(synthetic::plan_of(draft));
  CHECK(mixed.name == "coated fiber, #c0392b");
  CHECK(mixed.colour == Rgba{0xC0, 0x39, 0x2B, 255});

  draft.spool.look = SpoolLook::wood;
  const Material wood = spool_material(synthetic::plan_of(draft), Theme::light);
  CHECK(wood.colour.r > wood.colour.b + 40);
  draft.spool.look = SpoolLook::plastic;
  CHECK(spool_material(synthetic::plan_of(draft), Theme::dark).colour == theme_colours(Theme::dark).spool);
}

TEST_CASE("the colouring by material has the fiber's colour all over, and its sheen, and others have none") {
  PlanDraft draft = synthetic::draft();
  draft.fiber.look = FiberLook::steel;
  const Plan plan = synthetic::plan_of(draft);
  const SceneSource source = source_of(plan, synthetic::nested(plan, 16, 2, 12, 1.02));
  View view;
  view.colouring = Colouring::material;
  const Scene scene = make_scene(source, view);
  CHECK(scene.sheen == fiber_material(plan).sheen);
  REQUIRE(scene.legend.entries.size() == 1);
  CHECK(scene.legend.entries.front().text == "steel");
  for (const Rgba& colour : scene.shell.colour) {
    if (colour.a > 0) REQUIRE(colour == fiber_material(plan).colour);
  }
  view.colouring = Colouring::layer;
  CHECK(make_scene(source, view).sheen == Sheen{});
}
