#include <algorithm>
#include <string>

#include <catch2/catch.hpp>

#include "base/issue.h"
#include "store/catalogues.h"
#include "store/new_request.h"
#include "temporary_folder.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

class RequestShop {
 public:
  RequestShop() {
    folder_.file("shop.toml", R"(format = "lay-catalogue 1"
[[spool]]
name = "Reel x 9"
source = "measured"
barrel_diameter = "50 mm"
flange_diameter = "400 mm"
inside_width = "10 mm"
[[fiber]]
name = "30 gauge"
source = "measured"
diameter = "0.5 mm"
friction = 0.3
[[machine]]
name = "W2"
source = "measured"
[machine.traverse]
free_length = "80 mm"
[machine.traverse.reversal]
kind = "ramp"
turns = 0.25
)");
  }
  [[nodiscard]] Catalogues catalogues() const { return Catalogues({{folder_.path()}}); }

 private:
  testing::TemporaryFolder folder_;
};

NewRequest a_request() {
  NewRequest request;
  request.spool = "2 x 4 x 1 1/4 in";
  request.fiber = "0,26 mm";
  request.length = "2 km";
  return request;
}

std::string request_told(const NewRequest& request) {
  std::string all;
  const RequestShop shop;
  const Catalogues catalogues = shop.catalogues();
  const Result<NewDraft> made = draft_of(request, catalogues);
  for (const Issue& issue : made.issues()) all += to_text(issue) + '\n';
  return all;
}

NewDraft made(const NewRequest& request) {
  const RequestShop shop;
  const Catalogues catalogues = shop.catalogues();
  const Result<NewDraft> draft = draft_of(request, catalogues);
  INFO(request_told(request));
  REQUIRE(draft.ok());
  return draft.value();
}

bool given(const NewDraft& draft, const std::string& path) {
  return std::find(draft.given.begin(), draft.given.end(), path) != draft.given.end();
}

}  // namespace

TEST_CASE("sizes, a diameter and a length make a draft") {
  const NewDraft draft = made(a_request());
  CHECK(draft.draft.spool.barrel_diameter_mm == 50.8);
  CHECK(draft.draft.spool.flange_diameter_mm == 101.6);
  CHECK(draft.draft.spool.inside_width_mm == 31.75);
  CHECK(draft.draft.fiber.diameter_mm == 0.26);
  CHECK(draft.draft.wind.length_mm == 2e6);
  CHECK(draft.draft.entries.empty());
  CHECK(draft.draft.title == "0,26 mm on 2 x 4 x 1 1/4 in, 2 km");
  CHECK(draft.draft.origins.at("spool.flange_diameter").written == "4 in");
  // What nobody said is assumed, and stays where it is.
  CHECK(draft.draft.fiber.friction == usual_friction);
  CHECK(draft.draft.traverse.free_length_mm == usual_free_length_mm);
  CHECK(draft.assumed == std::set<std::string>{"fiber.friction", "traverse.free_length"});
  CHECK(given(draft, "traverse.free_length"));
  CHECK_FALSE(given(draft, "traverse.pitch"));
}

TEST_CASE("each size may have its own unit") {
  NewRequest request = a_request();
  request.spool = "50mm \xc3\x97 4\" X 10 mm";
  const NewDraft draft = made(request);
  CHECK(draft.draft.spool.barrel_diameter_mm == 50.0);
  CHECK(draft.draft.spool.flange_diameter_mm == 101.6);
  CHECK(draft.draft.spool.inside_width_mm == 10.0);
}

TEST_CASE("names are looked up before they are taken for sizes") {
  NewRequest request = a_request();
  request.spool = "Reel x 9";
  request.fiber = "30 gauge";
  request.machine = "W2";
  NewDraft draft = made(request);
  CHECK(draft.draft.spool.flange_diameter_mm == 400.0);
  CHECK(draft.draft.fiber.friction == 0.3);
  CHECK(draft.draft.traverse.free_length_mm == 80.0);
  CHECK(draft.draft.traverse.reversal.kind == ReversalKind::ramp);
  CHECK(draft.draft.entries.size() == 3);
  CHECK(draft.assumed.empty());
  CHECK(given(draft, "traverse.reversal.turns"));
  // What is said counts for more.
  request.free_length = "3\"";
  request.friction = "0,4";
  request.set = {{"traverse.pitch", "0,53 mm"}, {"traverse.start", "right"}};
  draft = made(request);
  CHECK(draft.draft.traverse.free_length_mm == 76.2);
  CHECK(draft.draft.fiber.friction == 0.4);
  CHECK(draft.draft.traverse.pitch_mm == 0.53);
  CHECK(draft.draft.traverse.start == Side::right);
  CHECK(given(draft, "traverse.pitch"));
}

TEST_CASE("what is missing or cannot be understood is told all at once") {
  CHECK_THAT(request_told({}),
             Contains("spool: is missing") && Contains("fiber: is missing") && Contains("length: is missing"));
  NewRequest request = a_request();
  request.spool = "Reel x 8";
  CHECK_THAT(request_told(request), Contains("spool = \"Reel x 8\"") && Contains("did you mean \"Reel x 9\"?") &&
                                        Contains("63 x 100 x 80 mm"));
  request = a_request();
  request.spool = "10 x 20 x 30";
  CHECK_THAT(request_told(request), Contains("has no unit"));
  request = a_request();
  request.fiber = "thin";
  CHECK_THAT(request_told(request), Contains("is in no catalogue of fibers") && Contains("or give its diameter"));
  request.fiber = "0.26 N";
  CHECK_THAT(request_told(request), Contains("is a force, but a length is needed"));
  request = a_request();
  request.machine = "W3";
  CHECK_THAT(request_told(request), Contains("machine = \"W3\"") && Contains("did you mean \"W2\"?"));
  request = a_request();
  request.length = "-2 km";
  CHECK_THAT(request_told(request), Contains("length = \"-2 km\": is out of range"));
  request = a_request();
  request.set = {{"traverse.pich", "1 mm"}, {"traverse.pitch", "1"}};
  CHECK_THAT(request_told(request),
             Contains("traverse.pich") && Contains("is no key of a plan") && Contains("has no unit"));
}

TEST_CASE("a single answer is judged alone") {
  const Catalogues catalogues({});
  CHECK_FALSE(wrong_with("length", "2 km", catalogues));
  CHECK_FALSE(wrong_with("spool", "2 x 4 x 1 in", catalogues));
  CHECK(wrong_with("length", "2", catalogues));
  CHECK(wrong_with("friction", "slippery", catalogues));
  CHECK_FALSE(wrong_with("friction", "held", catalogues));
  CHECK(wrong_with("machine", "W2", catalogues));
}
