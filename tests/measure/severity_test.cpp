#include <catch2/catch.hpp>

#include "measure/severity.h"
#include "synthetic_build.h"

using namespace laywright;
using namespace laywright::synthetic;

namespace {

Finding finding(FindingKind kind, double size_d, int places = 1) {
  Finding found;
  found.kind = kind;
  found.size_d = found.size_mm = size_d;  // fiber of 1 mm
  found.occurrences = places;
  return found;
}

// Of a wind of one km, so that places are places per km.
std::vector<Finding> weighed(const PlanDraft& plan, std::vector<Finding> findings, double gaps_m = 0.0) {
  Build build;
  build.length_mm = 1.0e6;
  Measurements m;
  m.findings = std::move(findings);
  m.layers.emplace_back();
  m.layers.back().gap_length_mm = gaps_m * 1.0e3;
  set_severities(plan_of(plan), build, m);
  return m.findings;
}

FindingSeverity of_one(FindingKind kind, double size_d, int places = 1) {
  return weighed(draft(), {finding(kind, size_d, places)}).front().severity;
}

constexpr auto small = FindingSeverity::small, look = FindingSeverity::worth_a_look, grave = FindingSeverity::grave;

}  // namespace

TEST_CASE("a finding is as severe as its size stands to the limit") {
  CHECK(of_one(FindingKind::pile_up, 1.1) == look);
  CHECK(of_one(FindingKind::pile_up, 1.3) == grave);
  CHECK(of_one(FindingKind::edge_valley, 1.3) == grave);
  CHECK(of_one(FindingKind::flange_gap, 0.8) == small);
  CHECK(of_one(FindingKind::flange_gap, 2.6) == grave);
  CHECK(of_one(FindingKind::dropped_turn, 1.5, 40) == small);
  CHECK(of_one(FindingKind::dropped_turn, 3.2) == look);
  CHECK(of_one(FindingKind::dropped_turn, 5.1) == grave);
  CHECK(of_one(FindingKind::ride_up, 1.8, 90) == small);
  CHECK(of_one(FindingKind::ride_up, 3.5) == look);
  CHECK(of_one(FindingKind::gap, 1.6, 90) == small);
  CHECK(of_one(FindingKind::gap, 6.0) == look);
  CHECK(of_one(FindingKind::bridge, 3.0) == small);
  CHECK(of_one(FindingKind::bridge, 6.0) == look);
  CHECK(of_one(FindingKind::rim_overrun, 0.0) == grave);
}

TEST_CASE("of a kind that comes too often, those are grave that make up a tenth of it") {
  const auto findings =
      weighed(draft(), {finding(FindingKind::ride_up, 1.0, 900), finding(FindingKind::ride_up, 2.0, 30),
                        finding(FindingKind::dropped_turn, 1.0, 150)});
  REQUIRE(findings.size() == 3);
  CHECK(findings[0].occurrences == 900);
  CHECK(findings[0].severity == grave);
  CHECK(findings[1].severity == small);
  CHECK(findings[2].severity == small);
  CHECK(weighed(draft(), {finding(FindingKind::ride_up, 1.0, 250)}).front().severity == look);
  CHECK(weighed(draft(), {finding(FindingKind::gap, 0.6, 500)}, 10.0).front().severity == small);
  CHECK(weighed(draft(), {finding(FindingKind::gap, 0.6, 500)}, 800.0).front().severity == grave);
}

TEST_CASE("the gravest comes first, of grave ones that which is furthest over its limit") {
  // As gravity.h puts them: dropped turns before valleys.
  const auto findings =
      weighed(draft(), {finding(FindingKind::dropped_turn, 1.4, 26), finding(FindingKind::dropped_turn, 6.0),
                        finding(FindingKind::ride_up, 3.5), finding(FindingKind::edge_valley, 9.0)});
  CHECK(findings[0].kind == FindingKind::edge_valley);
  CHECK(findings[1].size_d == 6.0);
  CHECK(findings[2].severity == look);
  CHECK(findings[3].severity == small);
}

TEST_CASE("grave findings of a kind stay together, in the order of their gravity") {
  const auto findings =
      weighed(draft(), {finding(FindingKind::flange_gap, 7.0, 90), finding(FindingKind::flange_gap, 9.0),
                        finding(FindingKind::edge_valley, 4.4)});
  CHECK(findings[0].size_d == 7.0);  // gravity.h: beyond 6 d more of the same is no worse
  CHECK(findings[1].size_d == 9.0);
  CHECK(findings[2].kind == FindingKind::edge_valley);
}

TEST_CASE("in a crossed wind gaps at flanges and between turns are planned, and the ribbon is grave") {
  PlanDraft crossed = draft();
  crossed.traverse.pitch_mm = 5.0;
  const auto findings = weighed(crossed,
                                {finding(FindingKind::flange_gap, 40.0, 80), finding(FindingKind::gap, 47.0, 800),
                                 finding(FindingKind::bridge, 9.0), finding(FindingKind::ride_up, 4.0, 900),
                                 finding(FindingKind::ribbon, 2.7, 40)},
                                960.0);
  CHECK(findings[0].kind == FindingKind::ribbon);
  CHECK(findings[0].severity == grave);
  for (std::size_t i = 1; i < findings.size(); ++i) CHECK(findings[i].severity == small);
}
