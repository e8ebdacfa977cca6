// The bar below the picture, drawn without a window.
#include "ui/panels.h"

#include <imgui_internal.h>  // FindWindowByName
#include <cmath>

#include <catch2/catch.hpp>

#include "session/bench_for_tests.h"
#include "ui/headless.h"

using namespace laywright;

TEST_CASE("no tip of the scrub bar covers the counter below it, or leaves the window") {
  const testing::LaidBench laid(testing::small_plan);
  testing::Headless ui(1024.0F, 700.0F);
  const auto draw = [&] { scrub_bar(laid.bench, ui.state, ui.out); };
  ui.frames({340.0F, 400.0F}, {684.0F, 100.0F}, draw);
  const auto places = ui.state.places.at;
  int tips = 0;
  for (const auto& [name, box] : places) {
    if (!name.starts_with("scrub ")) continue;
    for (const float share : {0.01F, 0.5F, 0.99F}) {
      // Whole pixels, as mice have them.
      ImGui::GetIO().MousePos = {std::ceil(box.x + share * (box.width - 2.0F)),
                                 std::ceil(box.y + 0.5F * box.height)};
      ui.frames({340.0F, 400.0F}, {684.0F, 100.0F}, draw);
      const ImGuiWindow* tip = ImGui::FindWindowByName("##Tooltip_00");
      CAPTURE(name, share);
      REQUIRE(tip != nullptr);
      CHECK(tip->Active);
      CHECK(tip->Pos.y + tip->Size.y <= box.y);
      CHECK(tip->Pos.x >= 0.0F);
      CHECK(tip->Pos.x + tip->Size.x <= 1024.0F);
      ++tips;
    }
  }
  CHECK(tips >= 15);
}
