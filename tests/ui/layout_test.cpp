// What the panels remember, as words and back.
#include <catch2/catch.hpp>

#include "ui/layout.h"

using namespace laywright;

TEST_CASE("the drawer and the tabs in front are found again") {
  PanelState before;
  before.drawer_open = false;
  before.drawer_height = 14.5F;
  before.focus.open_tabs = {"Plan", "Map", "View"};
  const std::string words = layout_words(before);
  CHECK(words == "drawer closed, 14.5 high; tabs Plan, Map, View");
  PanelState after;
  take_layout(after, words);
  CHECK_FALSE(after.drawer_open);
  CHECK(after.drawer_height == Approx(14.5F));
  for (const char* tab : {"Plan", "Map", "View"}) {
    CHECK(was_in_front(after, tab));
    CHECK_FALSE(was_in_front(after, tab));  // once
  }
  CHECK_FALSE(was_in_front(after, "Turn"));
}

TEST_CASE("words that are none leave the panels as they are") {
  for (const char* words : {"", ";;;", "drawer", "drawer open, high", "drawer open, -3 high",
                            "drawer open, 1e9 high", "tabs", "tabs ,,", "[window][x]\n", "drawer open, nan high"}) {
    INFO(words);
    PanelState state;
    take_layout(state, words);
    CHECK(state.drawer_open);
    CHECK(state.drawer_height == 0.0F);
    CHECK_FALSE(was_in_front(state, "Plan"));
  }
}
