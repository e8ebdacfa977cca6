// Figures that count while a wind is shown, and the ground that they stand on.
#include <catch2/catch.hpp>

#include "scene/palette.h"
#include "session/bench_for_tests.h"
#include "session/show_commands.h"
#include "ui/headless.h"
#include "ui/show_window.h"

using namespace laywright;

namespace {

constexpr float width = 1280.0F, height = 800.0F;

// The colour that covers a place of the picture, whatever is in it; none where the picture is seen.
std::optional<ImVec4> cover_at(const ImDrawList& list, float x, float y) {
  std::optional<ImVec4> cover;
  for (int i = 0; i + 2 < list.IdxBuffer.Size; i += 3) {
    const ImDrawVert& a = list.VtxBuffer[list.IdxBuffer[i]];
    const ImDrawVert& b = list.VtxBuffer[list.IdxBuffer[i + 1]];
    const ImDrawVert& c = list.VtxBuffer[list.IdxBuffer[i + 2]];
    const auto side = [](const ImVec2& p, const ImVec2& q, const ImVec2& at) {
      return (q.x - p.x) * (at.y - p.y) - (q.y - p.y) * (at.x - p.x);
    };
    const ImVec2 at{x, y};
    const float whole = side(a.pos, b.pos, c.pos);
    const float to_a = side(b.pos, c.pos, at) / whole, to_b = side(c.pos, a.pos, at) / whole;
    if (whole == 0.0F || to_a < 0.0F || to_b < 0.0F || to_a + to_b > 1.0F) continue;
    const ImVec4 inks[] = {ImGui::ColorConvertU32ToFloat4(a.col), ImGui::ColorConvertU32ToFloat4(b.col),
                           ImGui::ColorConvertU32ToFloat4(c.col)};
    if (inks[0].w < 1.0F || inks[1].w < 1.0F || inks[2].w < 1.0F) continue;
    const float to_c = 1.0F - to_a - to_b;
    cover = ImVec4{to_a * inks[0].x + to_b * inks[1].x + to_c * inks[2].x,
                   to_a * inks[0].y + to_b * inks[1].y + to_c * inks[2].y,
                   to_a * inks[0].z + to_b * inks[1].z + to_c * inks[2].z, 1.0F};
  }
  return cover;
}

}  // namespace

TEST_CASE("words over a shown wind have the picture's ground to themselves: no fiber runs through them") {
  testing::TemporaryFolder folder;
  Workbench bench{testing::options_in(folder)};
  testing::Headless ui{width, height};
  ui.state.figure = ui.state.reading = ImGui::GetIO().Fonts->Fonts[0];
  REQUIRE(bench.apply(cmd::open(folder.file("a.lay.toml", testing::small_plan))));
  testing::wait_for_build(bench);
  REQUIRE(bench.apply(cmd::show()));
  auto now = Workbench::Clock::now() + std::chrono::hours(1);
  for (int i = 0; i < 60; ++i) bench.poll(now += std::chrono::milliseconds(100));
  REQUIRE(veil(*bench.showing()) == 0.0);
  ImGui::NewFrame();
  (void)draw_show(bench, ui.state);
  const ImDrawList& list = *ImGui::GetBackgroundDrawList();
  const ThemeColours colours = theme_colours(Theme::light);
  // The picture's own ground there: ground.frag.glsl.
  const auto is_ground = [&](float x, float y) {
    const std::optional<ImVec4> cover = cover_at(list, x, y);
    const Rgba ground = mixed(colours.ground_top, colours.ground_foot, y / height);
    return cover && std::abs(255.0F * cover->x - static_cast<float>(ground.r)) < 1.6F &&
           std::abs(255.0F * cover->y - static_cast<float>(ground.g)) < 1.6F &&
           std::abs(255.0F * cover->z - static_cast<float>(ground.b)) < 1.6F;
  };
  for (const float x : {2.0F, 0.37F * width, 0.61F * width, width - 2.0F}) {
    CAPTURE(x);
    CHECK(is_ground(x, 2.0F));
    CHECK(is_ground(x, height - 3.0F));
    CHECK(is_ground(x, 0.94F * height));
    CHECK_FALSE(cover_at(list, x, 0.5F * height));
    CHECK_FALSE(cover_at(list, x, 0.79F * height));  // the spool comes down to here
  }
  ImGui::Render();
}

TEST_CASE("figures keep their unit while they count") {
  CHECK(counted_length(0.0, 25e6, Units::metric) == "0.00 km");
  CHECK(counted_length(12.346e6, 25e6, Units::metric) == "12.35 km");
  CHECK(counted_length(1234.0, 32'800.0, Units::metric) == "1.2 m");
  CHECK(counted_length(123'400.0, 832'000.0, Units::metric) == "123 m");
  CHECK(counted_length(3.048e6, 25e6, Units::inch) == "10,000 ft");  // a foot is 304.8 mm
  CHECK(counted_turns(0.0) == "0");
  CHECK(counted_turns(999.9) == "999");
  CHECK(counted_turns(45'012.0) == "45,012");
  CHECK(counted_turns(1'234'567.0) == "1,234,567");
  CHECK(counted_time(65.0, 4000.0) == "0 h 01 min");
  CHECK(counted_time(5.0, 600.0) == "0 min 05 s");
  CHECK(counted_time(5.0, 40.0) == "5 s");
}
