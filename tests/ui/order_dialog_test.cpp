// The dialog of an order over spools, drawn without a window.
#include "ui/dialogs.h"

#include <algorithm>

#include <catch2/catch.hpp>

#include "order/reel_plan.h"
#include "session/bench_for_tests.h"
#include "session/order_commands.h"
#include "ui/headless.h"

using namespace laywright;

TEST_CASE("each spool of an order has a button in sight, in a small window too, that opens the plan of this spool") {
  const testing::TemporaryFolder folder;
  Workbench bench(testing::options_in(folder));
  (void)folder.file("reel.lay.toml", testing::reel);
  REQUIRE(bench.apply(cmd::open(folder.file(
      "a.order.toml",
      "format = \"lay-order 1\"\nplan = \"reel.lay.toml\"\n[[piece]]\nlength = \"200 m\"\ncount = 2\n"))));
  REQUIRE(testing::wait_until(bench, [&] { return !bench.order().status().busy; }));
  REQUIRE(bench.order().can_be_written());
  constexpr float width = 1024.0F, height = 640.0F;
  testing::Headless ui(width, height);
  ImGuiIO& io = ImGui::GetIO();
  for (int key = 0; key < ImGuiKey_COUNT; ++key) io.KeyMap[key] = 1 + key;  // not pressed
  const auto frames = [&] {
    ui.frames({0.0F, 0.0F}, {width, height}, [&] { order_dialog(bench, ui.state, ui.out); });
  };
  frames();
  for (const char* name :
       {"order open 0", "order open 1", "order write", "order again", "order another", "order close"}) {
    CAPTURE(name);
    REQUIRE(ui.state.places.at.count(name) == 1);
    const Box2 box = ui.state.places.at.at(name);
    CHECK((box.x > 0.0F && box.x + box.width < width && box.y > 0.0F && box.y + box.height < height));
  }
  const Box2 second = ui.state.places.at.at("order open 1");
  io.MousePos = {second.x + 0.5F * second.width, second.y + 0.5F * second.height};
  for (const bool down : {false, true, false}) {
    io.MouseDown[0] = down;
    frames();
  }
  CHECK(std::any_of(ui.out.begin(), ui.out.end(),
                    [](const Command& command) { return command.name() == cmd::open_spool_plan(1).name(); }));
  CHECK(std::none_of(ui.out.begin(), ui.out.end(),
                     [](const Command& command) { return command.name() == cmd::open_spool_plan(0).name(); }));
}
