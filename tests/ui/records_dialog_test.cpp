// The dialog of records, drawn without a window.
#include <algorithm>

#include <catch2/catch.hpp>

#include "session/bench_for_tests.h"
#include "session/records_commands.h"
#include "ui/dialogs.h"
#include "ui/headless.h"

using namespace laywright;

namespace {

struct ShownRecords {
  testing::TemporaryFolder folder;
  Workbench bench{testing::options_in(folder)};
  testing::Headless ui{1024.0F, 640.0F};

  ShownRecords() {
    ImGuiIO& io = ImGui::GetIO();
    for (int key = 0; key < ImGuiKey_COUNT; ++key) io.KeyMap[key] = key + 1;  // not pressed
    REQUIRE(bench.apply(cmd::open(folder.file("a.lay.toml", testing::small_plan))));
    testing::wait_for_build(bench);
    REQUIRE(testing::wait_until(bench, [&] { return bench.wound()->takeup() != nullptr; }));
    REQUIRE(bench.apply(cmd::ask(cmd::Question::records)));
    REQUIRE(bench.apply(cmd::move_records((folder.path() / "shop.db").string())));
    settle();
  }
  void settle() {
    REQUIRE(testing::wait_until(bench, [&] {
      return !bench.records().reading() && !bench.records().keeping() && bench.records().seen() &&
             bench.records().seen()->of == bench.records().looked_at();
    }));
  }
  void draw(const std::string& tab = "") {
    if (!tab.empty()) ui.state.records.wanted_tab = tab;
    ui.state.places.at.clear();
    for (int i = 0; i < 2; ++i)
      ui.frames({0.0F, 0.0F}, {1024.0F, 640.0F}, [&] { records_dialog(bench, ui.state, ui.out); });
  }
  [[nodiscard]] bool is_there(const std::string& place) const { return ui.state.places.at.contains(place); }
  // Right of the left edge, left of the right one.
  [[nodiscard]] bool fits(const std::string& place) const {
    const Box2& box = ui.state.places.at.at(place);
    return box.x >= 0.0F && box.width > 0.0F && box.x + box.width <= 0.97F * 1024.0F;
  }
  [[nodiscard]] bool gave(const std::string& name) const {
    return std::any_of(ui.out.begin(), ui.out.end(), [&](const Command& command) { return command.name() == name; });
  }
};

}  // namespace

TEST_CASE("a small window has room for all of a filter, and says that nothing was recorded yet") {
  ShownRecords shown;
  shown.draw();
  CHECK(shown.is_there("records none"));
  CHECK_FALSE(shown.is_there("records trouble"));
  CHECK_FALSE(shown.is_there("records tab page"));
  for (const char* each : {"spool", "order", "machine", "plan", "from", "to", "state", "clear"})
    CHECK(shown.fits(std::string("records filter ") + each));
  for (const char* each : {"place", "usual place", "reload"}) CHECK(shown.fits(std::string("records ") + each));
}

TEST_CASE("a spool's form has a row for each place to read at, and what is kept clears it and opens its page") {
  ShownRecords shown;
  shown.draw("keep");
  const std::size_t rows = shown.bench.wound()->takeup()->checkpoints.size();
  for (std::size_t row = 0; row < rows; ++row) CHECK(shown.fits("keep cell " + std::to_string(row) + " 5"));
  CHECK_FALSE(shown.is_there("keep cell " + std::to_string(rows) + " 5"));
  CHECK(shown.fits("keep now"));

  RecordsState& own = shown.ui.state.records;
  own.names.spool = "17";
  own.said.readings[0].cells[3] = "102.1";
  REQUIRE(shown.bench.apply(cmd::keep_spool(own.names, own.said)));
  own.asked_to_keep = true;
  shown.settle();
  shown.draw();
  CHECK(own.names == RecordNames{});
  CHECK(own.said.readings[0].empty());
  CHECK(shown.is_there("records readings"));
  CHECK(shown.is_there("records kept"));
  for (const char* each : {"records fit", "amend now", "amend cell 0 5"}) CHECK(shown.fits(each));
  REQUIRE(own.page.readings.size() == 1);
  CHECK(own.page.readings[0].measured == "102.100 mm");
}

TEST_CASE("Escape leaves the dialog, but not while a field is typed into") {
  ShownRecords shown;
  shown.draw();
  ImGuiIO& io = ImGui::GetIO();
  const int escape = io.KeyMap[ImGuiKey_Escape];
  const auto press = [&] {
    io.KeysDown[escape] = true;
    shown.draw();
    io.KeysDown[escape] = false;
    shown.draw();
  };
  const Box2 place = shown.ui.state.places.at.at("records place");
  io.MousePos = {place.x + 0.3F * place.width, place.y + 0.5F * place.height};
  for (const bool down : {true, false}) {
    io.MouseDown[0] = down;
    shown.draw();
  }
  press();
  CHECK_FALSE(shown.gave("answered"));
  press();
  CHECK(shown.gave("answered"));
}
