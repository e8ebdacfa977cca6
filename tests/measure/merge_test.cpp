#include <catch2/catch.hpp>

#include <algorithm>
#include <random>
#include <vector>

#include "findings_of.h"
#include "measure/arc.h"
#include "measure/merge.h"
#include "synthetic_build.h"

using namespace laywright;
using namespace laywright::synthetic;

namespace {

Occurrence at(int layer, double x, double from_deg, double size) {
  Occurrence occurrence;
  occurrence.layer = layer;
  occurrence.first_node = static_cast<std::size_t>(layer) * 1000 + static_cast<std::size_t>(x);
  occurrence.end_node = occurrence.first_node + 1;
  occurrence.x_min_mm = x;
  occurrence.x_max_mm = x + 1.0;
  occurrence.arc = {from_deg, 10.0};
  occurrence.size_mm = size;
  occurrence.worst_node = occurrence.first_node;
  return occurrence;
}

}  // namespace

TEST_CASE("arcs are joined the short way round") {
  const Arc across = covering(Arc{350.0, 5.0}, Arc{10.0, 20.0});
  CHECK(across.from_deg == 350.0);
  CHECK(across.span_deg == Approx(40.0));
  const Arc same = covering(Arc{10.0, 20.0}, Arc{350.0, 5.0});
  CHECK(same.from_deg == 350.0);
  CHECK(same.span_deg == Approx(40.0));
  CHECK(covering(Arc{0.0, 100.0}, Arc{20.0, 30.0}).span_deg == Approx(100.0));
  CHECK(covering(Arc{0.0, 200.0}, Arc{180.0, 190.0}).is_all_round());
  CHECK(covering(Arc::all_round(), Arc{5.0, 5.0}).is_all_round());
  CHECK(apart_deg(Arc{350.0, 5.0}, Arc{10.0, 20.0}) == Approx(15.0));
  CHECK(apart_deg(Arc{10.0, 20.0}, Arc{350.0, 5.0}) == Approx(15.0));
  CHECK(apart_deg(Arc{0.0, 5.0}, Arc{350.0, 30.0}) == 0.0);
  CHECK(arc_between(350.0, 370.0).span_deg == Approx(20.0));
  CHECK(arc_between(700.0, 1100.0).is_all_round());
}

TEST_CASE("neighbours in x, angle and layer become one cluster") {
  Merger merger(Nearness{2.0, 30.0, 2});
  merger.add(at(3, 10.0, 355.0, 0.6));
  merger.add(at(3, 12.5, 20.0, 0.9));
  merger.add(at(5, 11.0, 350.0, 0.7));
  const auto clusters = merger.finish();
  REQUIRE(clusters.size() == 1);
  const Cluster& c = clusters.front();
  CHECK(c.count == 3);
  CHECK(c.extent.layer == 3);
  CHECK(c.last_layer == 5);
  CHECK(c.worst_layer == 3);
  CHECK(c.extent.size_mm == 0.9);
  CHECK(c.extent.worst_node == 3012);
  CHECK(c.extent.x_min_mm == 10.0);
  CHECK(c.extent.x_max_mm == 13.5);
  CHECK(c.extent.arc.from_deg == Approx(350.0));
  CHECK(c.extent.arc.span_deg == Approx(40.0));
}

TEST_CASE("what is apart in x, angle or layer stays apart") {
  Merger merger(Nearness{2.0, 30.0, 2});
  merger.add(at(3, 10.0, 0.0, 0.6));
  merger.add(at(3, 14.0, 0.0, 0.6));
  merger.add(at(3, 10.0, 100.0, 0.6));
  merger.add(at(6, 10.0, 0.0, 0.6));
  CHECK(merger.finish().size() == 4);
}

TEST_CASE("what joins two clusters makes them one") {
  Merger merger(Nearness{1.0, 30.0, 1});
  merger.add(at(1, 10.0, 0.0, 0.6));
  merger.add(at(1, 14.0, 0.0, 0.6));
  merger.add(at(1, 12.0, 0.0, 0.6));
  CHECK(merger.finish().size() == 1);
}

TEST_CASE("no occurrence is lost, and clusters stay few") {
  std::mt19937 random(7);
  Merger merger(Nearness{1.0, 30.0, 2});
  double greatest = 0.0;
  constexpr int many = 20000;
  for (int i = 0; i < many; ++i) {
    const int layer = 1 + i * 60 / many;
    const double size = static_cast<double>(random() % 100000) * 1e-5;
    greatest = std::max(greatest, size);
    merger.add(at(layer, static_cast<double>(random() % 1000), static_cast<double>(random() % 360), size));
  }
  int count = 0;
  double largest = 0.0;
  const auto clusters = merger.finish();
  for (const Cluster& c : clusters) {
    count += c.count;
    largest = std::max(largest, c.extent.size_mm);
  }
  CHECK(clusters.size() <= Merger::most_clusters);
  CHECK(count == many);
  CHECK(largest == greatest);
}

TEST_CASE("a wildly disordered build has a list that can be read") {
  PlanDraft wild = draft();
  wild.spool.inside_width_mm = 80.0;
  wild.spool.flange_diameter_mm = 400.0;
  const Plan plan = plan_of(wild);
  std::mt19937 random(3);
  const auto noise = [&] { return static_cast<double>(random() % 10000) * 1e-4 - 0.5; };
  BuildMaker maker(plan, 48);
  for (int layer = 0; layer < 60; ++layer) {
    maker.stroke(layer % 2 == 0 ? 1 : -1, 75, [&](double turn) {
      const double x = layer % 2 == 0 ? 1.0 + 1.04 * turn : 79.0 - 1.04 * turn;
      return Place{x + noise(), 50.5 + 0.8 * layer + 4.0 * noise(),
                   random() % 3 == 0 ? Support::none : Support::turn, random() % 50 == 0};
    });
  }
  const Measurements m = measured(plan, maker.finish());
  CHECK(m.findings.size() > 3);
  CHECK(m.findings.size() < 80);
  for (const Finding& finding : m.findings) {
    CHECK(finding.size_mm >= 0.0);
    CHECK(finding.layer >= 1);
    CHECK(finding.last_layer <= 60);
    CHECK(finding.length_mm[1] >= finding.length_mm[0]);
    CHECK(finding.text.size() > 60);
    CHECK(finding.text.back() == '.');
  }
}

TEST_CASE("a build without faults has no findings") {
  const Plan plan = plan_of(draft());
  CHECK(measured(plan, nested(plan, 60, 6, 20, 1.0)).findings.empty());
}

TEST_CASE("a cluster keeps its largest places, largest first, and no more than it may") {
  Merger merger(Nearness{5.0, 360.0, 2});
  std::mt19937 engine(3);
  std::vector<double> sizes;
  for (int i = 0; i < 500; ++i) {
    sizes.push_back(static_cast<double>(engine() % 100'000) / 1000.0);
    merger.add(at(3, 10.0 + i, 0.0, sizes.back()));
  }
  std::sort(sizes.rbegin(), sizes.rend());
  const auto clusters = merger.finish();
  REQUIRE(clusters.size() == 1);
  const std::vector<FindingPlace>& places = clusters.front().places;
  REQUIRE(places.size() == Finding::most_places);
  for (std::size_t i = 0; i < places.size(); ++i) CHECK(places[i].size_mm == sizes[i]);
  CHECK(places.front().node == clusters.front().extent.worst_node);

  Merger two(Nearness{5.0, 360.0, 2});
  two.add(at(3, 10.0, 0.0, 0.5));
  two.add(at(3, 12.0, 0.0, 0.7));
  const auto both = two.finish();
  REQUIRE(both.front().places.size() == 2);
  CHECK(both.front().places[0].first_node == 3012);
  CHECK(both.front().places[1].first_node == 3010);
}
