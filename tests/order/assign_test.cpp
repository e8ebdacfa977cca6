// Which spool takes what, against a search through all there is.
#include "order/assign.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <optional>
#include <random>
#include <vector>

#include <catch2/catch.hpp>

using namespace laywright;

namespace {

double sum(const std::vector<double>& values) { return std::accumulate(values.begin(), values.end(), 0.0); }

// Every piece onto every spool, one after the other, without a thought: the fewest spools that are used; none where none do.
std::optional<std::size_t> fewest_by_all(const std::vector<double>& pieces, std::vector<double> rooms,
                                         std::size_t at = 0, std::vector<bool> used = {}) {
  used.resize(rooms.size());
  if (at == pieces.size()) return static_cast<std::size_t>(std::count(used.begin(), used.end(), true));
  std::optional<std::size_t> best;
  for (std::size_t i = 0; i < rooms.size(); ++i) {
    if (pieces[at] > rooms[i]) continue;
    std::vector<double> rest = rooms;
    rest[i] -= pieces[at];
    std::vector<bool> now = used;
    now[i] = true;
    const auto found = fewest_by_all(pieces, rest, at + 1, now);
    if (found && (!best || *found < *best)) best = found;
  }
  return best;
}

std::vector<double> rooms_of(const std::vector<SpoolRoom>& kinds) {
  std::vector<double> rooms;
  for (const SpoolRoom& kind : kinds) rooms.insert(rooms.end(), static_cast<std::size_t>(*kind.count), kind.most_mm);
  return rooms;
}

// Each piece is delivered once, from its beginning to its end, and no spool has more than it takes.
void check_sound(const Assignment& found, const std::vector<double>& pieces, const std::vector<SpoolRoom>& kinds,
                 int splices) {
  std::vector<double> reached(pieces.size(), 0.0);
  std::map<std::size_t, int> used;
  for (const SpoolTakes& spool : found.spools) {
    ++used[spool.kind];
    double net = 0.0;
    CHECK_FALSE(spool.taken.empty());
    for (const Taken& taken : spool.taken) {
      CHECK(taken.length_mm > 0.0);
      CHECK(taken.from_mm == reached[taken.piece]);
      reached[taken.piece] += taken.length_mm;
      net += taken.length_mm;
    }
    CHECK(net <= kinds[spool.kind].most_mm * (1.0 + 1e-12));
    if (splices > 0) CHECK(spool.taken.size() <= static_cast<std::size_t>(splices) + 1);
  }
  for (std::size_t i = 0; i < kinds.size(); ++i)
    if (kinds[i].count) CHECK(used[i] <= *kinds[i].count);
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const bool left = std::count(found.left.begin(), found.left.end(), i) > 0;
    if (!left) CHECK(reached[i] == Approx(pieces[i]).epsilon(1e-12));
    if (splices == 0 && left) CHECK(reached[i] == 0.0);
  }
}

std::vector<double> random_pieces(std::mt19937_64& random, std::size_t most, unsigned longest) {
  std::vector<double> pieces(1 + random() % most);
  for (double& piece : pieces) piece = static_cast<double>(1 + random() % longest);
  return pieces;
}

}  // namespace

TEST_CASE("whole pieces go over the fewest spools there are, as trying all shows") {
  std::mt19937_64 random(7);
  int impossible = 0;
  for (int i = 0; i < 400; ++i) {
    const std::vector<double> pieces = random_pieces(random, 6, 12);
    std::vector<SpoolRoom> kinds{{static_cast<double>(8 + random() % 9), static_cast<int>(1 + random() % 3)}};
    if (random() % 2 == 0) kinds.push_back({static_cast<double>(4 + random() % 9), 1});
    const auto fewest = fewest_by_all(pieces, rooms_of(kinds));
    const Assignment found = assign(pieces, kinds, 0);
    CAPTURE(i, pieces, rooms_of(kinds));
    check_sound(found, pieces, kinds, 0);
    REQUIRE(found.left.empty() == fewest.has_value());
    impossible += fewest ? 0 : 1;
    if (!fewest) continue;
    CHECK(found.spools.size() == *fewest);
    CHECK(found.fewest);
  }
  CHECK(impossible > 20);
  // First-fit decreasing needs three spools here: 4 + 3 and 3 + 2 leave a 2 over.
  CHECK(assign({4, 3, 3, 2, 2, 2}, {{8.0, 3}}, 0).spools.size() == 2);
}

TEST_CASE("the piece at the end of a spool's room fits") {
  const Assignment found = assign({10e6, 10e6, 20e6}, {{20e6, std::nullopt}}, 0);
  CHECK(found.spools.size() == 2);
  CHECK(found.fewest);
  // Sums that rounding leaves a little beyond: three times 0.1 is not 0.3.
  CHECK(assign({0.1, 0.1, 0.1}, {{0.3, std::nullopt}}, 0).spools.size() == 1);
}

TEST_CASE("many pieces are assigned at once, soundly, and whether they are the fewest is told honestly") {
  std::mt19937_64 random(8);
  int certain = 0;
  for (int i = 0; i < 20; ++i) {
    std::vector<double> pieces(1000);
    for (double& piece : pieces) piece = static_cast<double>(1 + random() % 1000);
    const std::vector<SpoolRoom> kinds{{2000.0, std::nullopt}};
    const Assignment found = assign(pieces, kinds, 0);
    check_sound(found, pieces, kinds, 0);
    CHECK(found.left.empty());
    const double least = std::ceil(sum(pieces) / 2000.0);
    CHECK(static_cast<double>(found.spools.size()) >= least);
    CHECK(found.fewest == (static_cast<double>(found.spools.size()) == least));
    certain += found.fewest ? 1 : 0;
  }
  CHECK(certain > 0);
}

TEST_CASE("with splices the spools are filled, within what each may have of them") {
  std::mt19937_64 random(9);
  for (int i = 0; i < 400; ++i) {
    const std::vector<double> pieces = random_pieces(random, 10, 40);
    const std::vector<SpoolRoom> kinds{{static_cast<double>(5 + random() % 30), std::nullopt},
                                       {static_cast<double>(5 + random() % 30), 2}};
    const int splices = static_cast<int>(1 + random() % 3);
    const Assignment found = assign(pieces, kinds, splices);
    CAPTURE(i, pieces, splices);
    check_sound(found, pieces, kinds, splices);
    CHECK(found.left.empty());
    const double roomiest = std::max(kinds[0].most_mm, kinds[1].most_mm);
    const double least = std::ceil(sum(pieces) / roomiest - 1e-9);
    CHECK(static_cast<double>(found.spools.size()) >= least);
    // Where any number of lengths may be on a spool, it is filled, and so are the fewest enough.
    const Assignment free = assign(pieces, {{20.0, std::nullopt}}, 1000);
    CHECK(static_cast<double>(free.spools.size()) == std::ceil(sum(pieces) / 20.0 - 1e-9));
    CHECK(free.fewest);
  }
}

TEST_CASE("a long piece is cut where a splice is allowed, and goes on on the next spool") {
  const Assignment found = assign({50.0, 10.0}, {{25.0, std::nullopt}}, 1);
  REQUIRE(found.spools.size() == 3);
  CHECK(found.fewest);
  CHECK(found.spools[0].taken[0].length_mm == 25.0);
  CHECK(found.spools[1].taken[0].from_mm == 25.0);
  CHECK(found.spools[2].taken[0].piece == 1);
  CHECK(assign({50.0, 10.0}, {{25.0, std::nullopt}}, 0).left == std::vector<std::size_t>{0});
}

TEST_CASE("nothing is cut where that saves no spool") {
  const Assignment found = assign({10.0, 15.0, 15.0, 10.0}, {{25.0, std::nullopt}}, 1);
  CHECK(found.spools.size() == 2);
  for (const SpoolTakes& spool : found.spools) {
    for (const Taken& taken : spool.taken) CHECK(taken.from_mm == 0.0);
  }
}

TEST_CASE("too few spools leave pieces, with and without splices") {
  CHECK(assign({5.0, 5.0, 5.0}, {{5.0, 2}}, 0).left.size() == 1);
  CHECK(assign({5.0, 5.0, 5.0}, {{7.0, 2}}, 1).left.size() == 1);
  CHECK(assign({1.0, 1.0, 1.0, 1.0, 1.0}, {{100.0, 1}}, 3).left.size() == 1);  // five lengths have four splices
}
