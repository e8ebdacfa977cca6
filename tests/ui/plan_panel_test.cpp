// The form of the plan, drawn without a window.
#include "ui/panels.h"

#include <catch2/catch.hpp>

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
