// The dialog of the share page, drawn without a window.
#include "ui/dialogs.h"

#include <algorithm>

#include <catch2/catch.hpp>

#include "session/bench_for_tests.h"
#include "session/window_commands.h"
#include "ui/headless.h"

using namespace laywright;

TEST_CASE("Enter asks for the page's name when the dialog has come up, whatever the mouse did before") {
  const testing::TemporaryFolder folder;
  Workbench::Options options = testing::options_in(folder);
  options.make_page = [](const PageOrder&, Progress&) { return std::string(); };
  Workbench bench(std::move(options));
  REQUIRE(bench.apply(cmd::open(folder.file("a.lay.toml", testing::small_plan))));
  testing::wait_for_build(bench);
  testing::Headless ui(1024.0F, 700.0F);
  ImGuiIO& io = ImGui::GetIO();
  constexpr int enter = 1;
  for (int key = 0; key < ImGuiKey_COUNT; ++key) io.KeyMap[key] = enter + 1 + key;  // not pressed
  io.KeyMap[ImGuiKey_Enter] = enter;
  const auto frames = [&](bool dialog) {
    ui.frames({0.0F, 0.0F}, {1024.0F, 700.0F}, [&] {
      if (dialog) page_dialog(bench, ui.state, ui.out);
    });
  };
  const auto asks = [&] {
    return std::any_of(ui.out.begin(), ui.out.end(), [](const Command& command) {
      return command.name() == cmd::ask(cmd::Question::page_to_save).name();
    });
  };
  io.MousePos = {20.0F, 20.0F};
  for (const bool down : {true, false}) {
    io.MouseDown[0] = down;
    frames(false);
  }
  frames(true);
  CHECK_FALSE(asks());
  io.KeysDown[enter] = true;
  ui.state.focus.enter_held = true;  // as take_input() sets it
  frames(true);
  CHECK(asks());
}
