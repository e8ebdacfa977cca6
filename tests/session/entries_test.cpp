// Plans in the window that name entries of catalogues.
#include <string>

#include "bench_for_tests.h"
#include "desk/plan_edits.h"
#include "plan/named_entry.h"

using namespace laywright;
using namespace laywright::testing;
using Catch::Matchers::Contains;

namespace {

// Has a spool of 80 mm, "Reel", and a machine with a take-up, "W2".
class Shop : public EntrySource {
 public:
  [[nodiscard]] Result<NamedEntry> find(EntryKind kind, const std::string& name) const override {
    if (kind == EntryKind::spool && name == "Reel")
      return NamedEntry{kind, name, "shop.toml", 2, {{"spool.inside_width", {80.0, "80 mm", 4}}}};
    if (kind == EntryKind::machine && name == "W2")
      return NamedEntry{kind,
                        name,
                        "shop.toml",
                        9,
                        {{"takeup.taper", {0.3, "0.3", 10}}, {"traverse.guide_play", {0.01, "0.01 mm", 11}}}};
    Issue issue;
    issue.what = "is nowhere";
    return issue;
  }
};

std::string named_plan() {
  std::string text(small_plan);
  const std::size_t at = text.find("inside_width"), end = text.find('\n', at);
  text.replace(at, end - at, "name = \"Reel\"");
  return text + "\n[machine]\nname = \"W2\"\n";
}

PlanState state_of(const std::string& text) {
  const Shop shop;
  const Result<PlanState> state = state_from_text(text, "a.lay.toml", &shop);
  REQUIRE(state.ok());
  return state.value();
}

}  // namespace

TEST_CASE("a field that is emptied has the entry's value again") {
  const PlanState state = state_of(named_plan());
  CHECK_FALSE(has_error(issues_in(state)));
  const PlanState own = with_text(state, "spool.inside_width", "70 mm");
  CHECK(own.draft.spool.inside_width_mm == 70.0);
  const PlanState back = with_text(own, "spool.inside_width", "");
  CHECK(back.draft.spool.inside_width_mm == 80.0);
  CHECK(same_state(back, state));
  CHECK(back.draft.origins.at("spool.inside_width").written == "80 mm");
}

TEST_CASE("a take-up that the machine's entry gives can be taken away, and the rest of it stays") {
  const PlanState state = state_of(named_plan());
  REQUIRE(state.draft.takeup);
  const PlanState without = with_takeup(state, false);
  CHECK_FALSE(without.draft.takeup);
  CHECK(entry_of(without.draft, EntryKind::machine) == nullptr);
  CHECK(without.draft.traverse.guide_play_mm == 0.01);
  CHECK(entry_of(without.draft, EntryKind::spool) != nullptr);
}

TEST_CASE("a plan whose entry is nowhere is opened, told, and not saved over") {
  testing::TemporaryFolder folder;
  std::string text = named_plan();
  text.replace(text.find("Reel"), 4, "Lost");
  const std::string file = folder.file("a.lay.toml", text);
  auto chores = std::make_shared<ErrandQueue>();
  auto opened = Document::open(file, {[] {}, chores, std::make_shared<Shop>()});
  REQUIRE(opened.ok());
  Document& document = *opened.value();
  CHECK_FALSE(document.sound());
  document.edit(with_text(document.state(), "traverse.pitch", "1.1 mm"), "pitch");
  const Issues refused = document.save();
  REQUIRE(refused.size() == 1);
  CHECK_THAT(refused.front().what, Contains("is not saved: spool.name is nowhere"));
}

TEST_CASE("an opened plan keeps its names when it is saved") {
  testing::TemporaryFolder folder;
  const std::string file = folder.file("a.lay.toml", named_plan());
  auto chores = std::make_shared<ErrandQueue>();
  auto opened = Document::open(file, {[] {}, chores, std::make_shared<Shop>()});
  REQUIRE(opened.ok());
  Document& document = *opened.value();
  document.edit(with_text(document.state(), "traverse.pitch", "1.1 mm"), "pitch");
  CHECK(document.save().empty());
  std::string expected = named_plan();
  const std::size_t at = expected.find("pitch"), end = expected.find('\n', at);
  expected.replace(at, end - at, "pitch = \"1.1 mm\"");
  CHECK(contents(file) == expected);
}
