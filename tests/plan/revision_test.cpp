#include "plan/revision.h"

#include <regex>

#include <catch2/catch.hpp>

#include "plan/plan_file.h"

using namespace laywright;

namespace {

const std::string written = R"(format = "lay-plan 1"
[spool]
barrel_diameter = "150 mm"
flange_diameter = "236 mm"
inside_width = "95 mm"
[fiber]
diameter = "0.254 mm"
friction = 0.5
[traverse]
pitch = "0.26 mm"
left_stop = "0.13 mm"
right_stop = "0.13 mm"
free_length = "50 mm"
[wind]
length = "1 km"
)";

std::string revision_with(const std::string& from, const std::string& to) {
  std::string text = written;
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  const Result<Plan> plan = plan_from_text(text.replace(at, from.size(), to), "a.lay.toml");
  REQUIRE(plan.ok());
  return revision_of(plan.value().draft());
}

}  // namespace

TEST_CASE("a plan's revision changes with what its wind depends on, and with nothing else") {
  const std::string first = revision_with("95 mm", "95 mm");
  CHECK(std::regex_match(first, std::regex("[0-9A-F]{4}-[0-9A-F]{4}")));
  CHECK(revision_with("95 mm", "95.001 mm") != first);
  CHECK(revision_with("\"1 km\"", "\"1 km\"\n[[wind.step]]\nfrom_layer = 3\npitch = \"0.27 mm\"") != first);
  CHECK(revision_with("\"1 km\"", "\"1 km\"\ntension = \"1 N\"") != first);
  CHECK(revision_with("lay-plan 1\"", "lay-plan 1\"\ntitle = \"A\"\nnotes = \"B\" # C") == first);
  CHECK(revision_with("[spool]", "[order]\nnumber = \"1\"\ncustomer = \"C\"\nlot = \"L\"\nspool = \"2\"\n[spool]") ==
        first);
  CHECK(revision_with("0.254 mm", "0.01 in") == first);
  CHECK(revision_with("\"95 mm\"", "\"95 mm\"\nlook = \"wood\"") == first);
  CHECK(revision_with("0.254 mm\"", "0.254 mm\"\nlook = \"coated\"\ncolour = \"blue\"") == first);
  CHECK(revision_with("\"95 mm\"", "\"95 mm\"\nflange_taper = \"0 deg\"") == first);  // the usual value, written out
}

// So that a sheet printed today is found with a program of next year.
TEST_CASE("a plan's revision stays what it was") { CHECK(revision_with("95 mm", "95 mm") == "0003-C9C3"); }
