#include <cmath>
#include <filesystem>
#include <fstream>

#include "plan/plan_writer.h"
#include "sample_plan.h"
#include "temporary_folder.h"

using namespace laywright;
namespace fs = std::filesystem;

TEST_CASE("every key arrives in its member, in the unit of its name") {
  const PlanDraft d = sample::draft_of();
  CHECK(d.file == "a.lay.toml");
  CHECK(d.title == "Every key");
  CHECK(d.notes == "none");
  CHECK(d.spool.barrel_diameter_mm == 150.0);
  CHECK(d.spool.flange_diameter_mm == 236.0);
  CHECK(d.spool.inside_width_mm == 95.0);
  CHECK(d.spool.flange_taper_rad == Approx(std::acos(-1.0) / 180));
  CHECK(d.spool.barrel_taper_mm == 0.2);
  CHECK(d.spool.flange_runout_mm == 0.1);
  CHECK(d.spool.mass_kg == 0.9);
  CHECK(d.spool.look == SpoolLook::wood);
  CHECK(d.fiber.diameter_mm == 0.245);
  CHECK(d.fiber.diameter_tolerance_mm == 0.005);
  CHECK(d.fiber.friction == 0.5);
  CHECK(d.fiber.linear_mass_g_per_km == 66.0);
  CHECK(d.fiber.modulus_MPa == 72000.0);
  CHECK(d.fiber.core_diameter_mm == 0.125);
  CHECK(d.fiber.diameter_scatter_mm == Approx(0.002));
  CHECK(d.fiber.scatter_length_mm == 20'000.0);
  CHECK(d.fiber.max_tension_N == 8.4);
  CHECK(d.fiber.min_bend_diameter_mm == 60.0);
  CHECK(d.fiber.look == FiberLook::coated);
  CHECK(d.fiber.colour == FiberColour::blue);
  CHECK(d.traverse.motion == Motion::stepped);
  CHECK(d.traverse.pitch_mm == 0.26);
  CHECK(d.traverse.left_stop_mm == 0.13);
  CHECK(d.traverse.right_stop_mm == 0.14);
  CHECK(d.traverse.start == Side::left);
  CHECK(d.traverse.free_length_mm == 200.0);
  CHECK(d.traverse.step_angle_rad == Approx(std::acos(-1.0) / 4));
  CHECK(d.traverse.guide_play_mm == 0.01);
  CHECK(d.traverse.pitch_scatter == 0.005);
  CHECK(d.traverse.reversal.kind == ReversalKind::dwell);
  CHECK(d.traverse.reversal.turns == 0.5);
  CHECK(d.traverse.reversal.lost_motion_mm == 0.02);
  CHECK(d.traverse.reversal.stop_scatter_mm == 0.03);
  CHECK(d.wind.length_mm == 3e6);
  CHECK_FALSE(d.wind.turns.has_value());
  CHECK_FALSE(d.wind.diameter_mm.has_value());
  CHECK(d.wind.tension_N == 0.5);
  CHECK(d.wind.line_speed_mm_per_s == 1000.0);
  REQUIRE(d.wind.steps.size() == 2);
  CHECK(d.wind.steps[0].from_layer == 10);
  CHECK(d.wind.steps[0].pitch_mm == 0.27);
  CHECK(d.wind.steps[0].left_stop_mm == 0.3);
  CHECK(d.wind.steps[0].right_stop_mm == 0.31);
  CHECK(d.wind.steps[1].from_layer == 20);
  CHECK_FALSE(d.wind.steps[1].left_stop_mm.has_value());
  REQUIRE(d.takeup.has_value());
  CHECK(d.takeup->control == TensionControl::taper);
  CHECK(d.takeup->taper == 0.3);
  CHECK(d.takeup->torque_at_full_current_Nmm == 600.0);
  CHECK(d.takeup->full_current_A == 0.5);
  CHECK(d.takeup->speed_ceiling_rpm == 300.0);
  CHECK(d.takeup->length_stop == LengthStop::both);
  CHECK(d.takeup->reaction_time_s == 0.2);
  CHECK(d.takeup->start_ramp_s == 6.0);
  CHECK(d.takeup->stop_ramp_s == 4.0);
  CHECK(d.limits.gap_d == 0.6);
  CHECK(d.limits.pile_up_d == 1.5);
  CHECK(d.limits.rim_clearance_mm == 3.0);
}

TEST_CASE("origins tell the line and the spelling of each value") {
  const PlanDraft d = sample::draft_of();
  CHECK(d.origins.at("spool.inside_width").line == sample::line_of(sample::full, "inside_width"));
  CHECK(d.origins.at("spool.inside_width").written == "95 mm");
  CHECK(d.origins.at("wind.step[1].pitch").line == sample::line_of(sample::full, "pitch = \"0.28 mm\""));
  CHECK(d.origins.at("wind.step[1].pitch").written == "0.28 mm");
  CHECK(d.origins.at("fiber.friction").written == "0.5");
  CHECK(d.origins.at("traverse.reversal").line == sample::line_of(sample::full, "[traverse.reversal]"));
}

namespace {

constexpr std::string_view shortest = R"(format = "lay-plan 1"
[spool]
barrel_diameter = "150 mm"
flange_diameter = "236 mm"
inside_width = "95 mm"
[fiber]
diameter = "0.245 mm"
friction = "held"
[traverse]
pitch = "0.26 mm"
left_stop = "0.13 mm"
right_stop = "0.13 mm"
free_length = "0 mm"
[wind]
turns = 1000
)";

}  // namespace

TEST_CASE("keys that are left out have their defaults") {
  const PlanDraft d = sample::draft_of(shortest);
  CHECK(check(d).ok());
  CHECK(d.title.empty());
  CHECK(std::isinf(d.fiber.friction));
  CHECK(d.traverse.motion == Motion::continuous);
  CHECK(d.traverse.start == Side::left);
  CHECK(d.traverse.reversal.kind == ReversalKind::instant);
  CHECK(d.wind.turns == 1000.0);
  CHECK_FALSE(d.takeup.has_value());
  CHECK(d.limits.gap_d == 0.5);
  CHECK(d.limits.pile_up_d == 1.0);
  CHECK(d.limits.rim_clearance_mm == 0.0);
  CHECK_FALSE(d.spool.mass_kg.has_value());
}

TEST_CASE("the same plan in millimetres and in inches is the same draft") {
  // 1 in = 25.4 mm, 1 lbf = 4.4482216152605 N, 1 ft/min = 5.08 mm/s, 1 lb = 0.45359237 kg (NIST SP 811).
  std::string metric(sample::full), inch(sample::full);
  const auto pair = [&](std::string_view old_piece, std::string_view in_metric, std::string_view in_inch) {
    metric = sample::with(old_piece, in_metric, metric);
    inch = sample::with(old_piece, in_inch, inch);
  };
  pair("\"150 mm\"", "\"152.4 mm\"", "\"6 in\"");
  pair("\"236 mm\"", "\"236.22 mm\"", "\"9.3 in\"");
  pair("\"95 mm\"", "\"95.25 mm\"", "\"3.75 in\"");
  pair("\"0.245 mm\"", "\"0.24511 mm\"", "\"9.65 mil\"");
  pair("\"0.26 mm\"", "\"0.25908 mm\"", "\"0.0102 in\"");
  pair("\"200 mm\"", "\"203.2 mm\"", "\"8 in\"");
  pair("\"3 km\"", "\"3048 m\"", "\"10000 ft\"");
  pair("\"0.5 N\"", "\"0.44482216152605 N\"", "\"0.1 lbf\"");
  pair("\"60 m/min\"", "\"1016 mm/s\"", "\"200 ft/min\"");
  pair("\"0.9 kg\"", "\"0.907184740 kg\"", "\"2 lb\"");
  pair("\"0.6 N*m\"", "\"0.56492414513808350 N*m\"", "\"5 lbf*in\"");
  CHECK(same_plan(sample::draft_of(metric), sample::draft_of(inch)));
}

TEST_CASE("other ways to write TOML are read alike") {
  const PlanDraft plain = sample::draft_of(shortest);
  std::string crlf("\xef\xbb\xbf");
  for (const char c : shortest) crlf += c == '\n' ? std::string("\r\n") : std::string(1, c);
  CHECK(same_plan(sample::draft_of(crlf), plain));
  CHECK(sample::draft_of(crlf).origins.at("wind.turns").line == 15);
  CHECK(same_plan(sample::draft_of(sample::with("turns = 1000", "turns = 1_000.0", shortest)), plain));
  CHECK(same_plan(sample::draft_of(sample::with("\"0.26 mm\"", "'0.26 mm'", shortest)), plain));
  CHECK(same_plan(sample::draft_of(R"(format = "lay-plan 1"
spool = { barrel_diameter = "150 mm", flange_diameter = "236 mm", inside_width = "95 mm" }
fiber.diameter = "0.245 mm"
fiber.friction = "held"
"wind".turns = 1000
[traverse]
pitch = "0.26 mm"
left_stop = "0.13 mm"
right_stop = "0.13 mm"
free_length = "0 mm"
reversal = { kind = "instant" }
)"),
                  plain));
}

TEST_CASE("a file that is not there, a folder and a file that is no plan are told from one another") {
  const auto told = [](const fs::path& path) {
    const Result<Plan> loaded = load_plan(path);
    REQUIRE_FALSE(loaded.ok());
    REQUIRE(loaded.issues().size() == 1);
    CHECK(loaded.issues()[0].file == path.string());
    return loaded.issues()[0].what;
  };
  const fs::path folder = fs::temp_directory_path();
  CHECK(told(folder / "laywright-no-such.lay.toml") == "there is no such file");
  CHECK(told(folder).find("is a folder") == 0);
  CHECK(told("") == "there is no such file");
  CHECK(told("/dev/null").find("is a device; it must be a file, a lay plan") == 0);
  if (fs::exists("/dev/zero")) CHECK(told("/dev/zero").find("is a device") == 0);
}

TEST_CASE("a plan is loaded from its file") {
  const testing::TemporaryFolder folder;
  const fs::path path = folder.file("load.lay.toml", std::string(sample::full));
  const Result<Plan> loaded = load_plan(path);
  REQUIRE(loaded.ok());
  CHECK(loaded.issues().empty());
  CHECK(loaded.value().file() == path.string());
  CHECK(loaded.value().spool().barrel_diameter_mm == 150.0);
}
