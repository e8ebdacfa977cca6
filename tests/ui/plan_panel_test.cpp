// The form of the plan, drawn without a window.
#include "ui/panels.h"

#include <algorithm>
#include <iterator>
#include <numeric>

#include <catch2/catch.hpp>

#include "plan/mixed_colour.h"
#include "session/plan_commands.h"

#include "session/bench_for_tests.h"
#include "ui/headless.h"

using namespace laywright;

TEST_CASE("in the narrowest window the words of every choice are whole") {
  const testing::LaidBench laid(testing::small_plan);
  testing::Headless ui(1024.0F, 3000.0F);
  // The side of a window of 1024 px.
  ui.frames({0.0F, 0.0F}, {em(22.5F), 3000.0F}, [&] { plan_panel(laid.bench, ui.state, ui.out); });
  const float around = em(1.0F) + 4.0F * ImGui::GetStyle().FramePadding.x;  // arrow and rims
  int choices = 0;
  for (const FieldRow& row : laid.bench.rows()) {
    const auto place = ui.state.places.at.find("field " + row.path);
    if (row.info->kind != FieldKind::choice || place == ui.state.places.at.end()) continue;
    for (const std::string& choice : row.info->choices) {
      CAPTURE(row.path, choice);
      CHECK(place->second.width >= ImGui::CalcTextSize(choice.c_str()).x + around);
      ++choices;
    }
  }
  CHECK(choices >= 6);
}

TEST_CASE("a colour that is none of the words is mixed beside them, and taken back in one step") {
  testing::LaidBench laid(testing::small_plan);
  testing::Headless ui(600.0F, 3000.0F);
  // What is open takes the keyboard, which asks for a map of its keys.
  std::iota(std::begin(ImGui::GetIO().KeyMap), std::end(ImGui::GetIO().KeyMap), 0);
  const auto draw = [&] {
    ui.frames({0.0F, 0.0F}, {em(22.5F), 3000.0F}, [&] { plan_panel(laid.bench, ui.state, ui.out); });
    for (const Command& command : ui.out) REQUIRE(laid.bench.apply(command));
    ui.out.clear();
  };
  const auto at = [&](const std::string& name, float across, float down) {
    CAPTURE(name);
    const auto place = ui.state.places.at.find(name);
    REQUIRE(place != ui.state.places.at.end());
    const Box2& box = place->second;
    ImGui::GetIO().MousePos = {box.x + across * box.width, box.y + down * box.height};
  };
  const auto press = [&](bool down) {
    ImGui::GetIO().MouseDown[0] = down;
    draw();
  };
  const auto colour = [&] {
    const auto rows = laid.bench.rows();
    return std::find_if(rows.begin(), rows.end(), [](const FieldRow& row) { return row.path == "fiber.colour"; })
        ->text;
  };
  draw();
  draw();  // columns settle
  const std::string before = colour();
  at("mix fiber.colour", 0.5F, 0.5F);
  draw();
  press(true);
  press(false);
  at("mixing fiber.colour", 0.3F, 0.3F);
  press(true);
  const std::string on_the_way = colour();
  CHECK(mixed_colour(on_the_way));
  at("mixing fiber.colour", 0.6F, 0.2F);
  draw();
  press(false);
  CHECK(mixed_colour(colour()));
  CHECK(colour() != on_the_way);
  CHECK(laid.bench.active()->document->state().draft.fiber.colour == *mixed_colour(colour()));
  REQUIRE(laid.bench.apply(cmd::undo()));
  CHECK(colour() == before);
}
