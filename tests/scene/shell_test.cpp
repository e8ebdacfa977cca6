// The shell against a search through all nodes, and against builds whose surface is known.
#include <catch2/catch.hpp>

#include "scene/palette.h"
#include "scenes.h"

using namespace laywright;
using scenes::Draw;
using scenes::random_source;
using scenes::source_of;
using scenes::top_at;

namespace {

struct Uppermost {
  std::uint32_t newest = no_node;
  double height = -1.0;
};

// Of the nodes [0, end), at a row, at all columns.
std::vector<Uppermost> search_row(const SceneSource& source, std::size_t row, std::size_t end) {
  const ShellGrid& grid = source.shells().grid();
  std::vector<Uppermost> columns(grid.columns);
  for (std::size_t k = grid.station(row); k < end; k += grid.stations) {
    for (std::size_t c = 0; c < grid.columns; ++c) {
      const auto top = top_at(source, k, grid.x(c));
      if (!top) continue;
      columns[c].newest = static_cast<std::uint32_t>(k);
      columns[c].height = std::max(columns[c].height, *top);
    }
  }
  return columns;
}

}  // namespace

TEST_CASE("the newest turn over a place is the uppermost: shells against a search through all turns") {
  std::size_t texels = 0, covered = 0;
  for (std::uint64_t seed = 1; seed <= 24; ++seed) {
    const SceneSource source = random_source(seed);
    const ShellGrid& grid = source.shells().grid();
    Draw draw(seed);
    for (std::size_t i = 0; i < 3; ++i) {
      const std::size_t end = i == 0 ? source.build().nodes.size() : 1 + draw.below(source.build().nodes.size());
      const std::vector<std::uint32_t> newest = source.shells().newest(source.build(), end);
      for (std::size_t row = i; row < grid.rows; row += 7) {
        const auto expected = search_row(source, row, end);
        for (std::size_t c = 0; c < grid.columns; ++c) {
          const std::uint32_t node = newest[row * grid.columns + c];
          INFO("seed " << seed << " end " << end << " row " << row << " column " << c);
          REQUIRE(node == expected[c].newest);
          ++texels;
          if (node == no_node) continue;
          ++covered;
          // Nodes touch to 1e-6 d (the rule of the lay model). In the sliver by which the circles of two that stand side
          // by side then overlap, an edge is up to sqrt(1e-6) d high.
          REQUIRE(expected[c].height - *top_at(source, node, grid.x(c)) <= 1.1e-3 * source.d());
        }
      }
    }
  }
  CHECK(texels > 100'000);
  CHECK(covered > texels / 2);
}

TEST_CASE("shells that are kept along the wind change nothing") {
  ShellSettings settings;
  settings.columns_per_d = 1.3;
  settings.most_rows = 12;
  for (std::uint64_t seed = 30; seed < 40; ++seed) {
    const SceneSource source = random_source(seed, 200.0, settings);
    const ShellGrid& grid = source.shells().grid();
    REQUIRE(source.build().nodes.size() > 5 * grid.texels());  // so that several are kept
    Draw draw(seed);
    for (int i = 0; i < 5; ++i) {
      const std::size_t end = draw.below(source.build().nodes.size() + 1);
      const std::vector<std::uint32_t> newest = source.shells().newest(source.build(), end);
      for (std::size_t row = 0; row < grid.rows; ++row) {
        const auto expected = search_row(source, row, end);
        for (std::size_t c = 0; c < grid.columns; ++c) REQUIRE(newest[row * grid.columns + c] == expected[c].newest);
      }
    }
  }
}

TEST_CASE("the size of a shell is bounded") {
  const SceneSource source = random_source(3);
  ShellSettings settings;
  settings.most_columns = 100;
  settings.most_rows = 10;
  settings.most_texels = 500;
  const ShellGrid grid = ShellGrid::of(source.plan(), source.build(), settings);
  CHECK(grid.rows == 10);
  CHECK(grid.columns == 50);
  for (std::size_t row = 0; row < grid.rows; ++row) {
    const double exact = static_cast<double>(row) * static_cast<double>(grid.stations) / 10.0;
    CHECK(std::abs(static_cast<double>(grid.station(row)) - exact) <= 0.5);
  }
}

TEST_CASE("a closed layer of turns shows circles") {
  // Straight turns that touch: at each place the circle of the nearest one.
  const Plan plan = synthetic::plan_of(synthetic::draft());
  const SceneSource source = source_of(plan, synthetic::nested(plan, 16, 1, 20, 1.0));
  const Shell shell = make_shell(source, {});
  const ShellGrid& grid = shell.grid;
  CHECK(grid.x_from_mm == 0.0);
  CHECK(grid.columns == 164);
  for (std::size_t row = 0; row < grid.rows; ++row) {
    for (std::size_t c = 0; c < grid.columns; ++c) {
      const double x = grid.x(c);
      const std::size_t i = shell.index(row, c);
      if (x > 20.0) {
        CHECK(shell.node[i] == no_node);
        CHECK(shell.radius_mm[i] == 50.0F);
        CHECK(shell.colour[i].a == 0);
        continue;
      }
      const double s = 2.0 * (x - std::floor(x) - 0.5);
      CHECK(shell.node[i] == static_cast<std::uint32_t>(std::floor(x)) * 16 + row);
      CHECK(shell.radius_mm[i] == Approx(50.5 + 0.5 * std::sqrt(1.0 - s * s)).margin(2e-5));
      CHECK(shell.across[i] == Approx(127.0 * s).margin(1.0));
      CHECK(shell.colour[i] == layer_rgba(1, 1));
    }
  }
}

TEST_CASE("slits narrower than a column are closed, gaps are not") {
  const Plan plan = synthetic::plan_of(synthetic::draft());
  const auto bare_between = [&](double pitch) {
    const SceneSource source = source_of(plan, synthetic::nested(plan, 16, 1, 14, pitch));
    const Shell shell = make_shell(source, {});
    std::size_t bare = 0;
    for (std::size_t c = 0; c < shell.grid.columns; ++c)
      if (shell.grid.x(c) < 14.0 * pitch - 0.3 && shell.node[shell.index(3, c)] == no_node) ++bare;
    return bare;
  };
  CHECK(bare_between(1.06) == 0);
  CHECK(bare_between(1.4) >= 3 * 13);  // 0.4 d are 3.2 columns
}

TEST_CASE("peeling takes the layers above away, and with gone the layers below") {
  const SceneSource source = random_source(7, 300.0);
  const Build& build = source.build();
  REQUIRE(build.strokes.size() >= 5);
  View view;
  view.first_layer = 2;
  view.last_layer = 3;
  const Shell shell = make_shell(source, view);
  view.outside = Outside::faded;
  const Shell faint = make_shell(source, view);
  const auto veil = make_veil(source, view);
  REQUIRE(veil);
  std::size_t shown = 0, hidden = 0;
  for (std::size_t i = 0; i < shell.node.size(); ++i) {
    if (shell.node[i] != no_node) {
      const std::size_t layer = build.stroke_of(shell.node[i]) + 1;
      REQUIRE((layer == 2 || layer == 3));
      REQUIRE(shell.colour[i] == layer_rgba(layer, build.strokes.size()));
      REQUIRE(faint.colour[i] == shell.colour[i]);
      ++shown;
    } else if (faint.node[i] != no_node) {
      REQUIRE(build.stroke_of(faint.node[i]) == 0);
      REQUIRE(faint.colour[i] == faded(layer_rgba(1, build.strokes.size()), Theme::light));
      ++hidden;
    }
    if (veil->node[i] != no_node) {
      REQUIRE(build.stroke_of(veil->node[i]) >= 3);
      REQUIRE(veil->colour[i].a < 255);
    }
  }
  CHECK(shown > 0);
  CHECK(hidden > 0);
}

TEST_CASE("a scrub to a node shows what a wind cut off there shows") {
  for (std::uint64_t seed = 50; seed < 56; ++seed) {
    const SceneSource source = random_source(seed);
    Draw draw(seed);
    const std::size_t node = draw.below(source.build().nodes.size());
    View view;
    view.until_turn = static_cast<double>(node) / static_cast<double>(source.stations());
    Build cut = source.build();
    cut.nodes.truncate(node + 1);
    while (cut.strokes.back().first_node > node) cut.strokes.pop_back();
    cut.turns = *view.until_turn;
    const SceneSource shorter(source.plan(), std::make_shared<const Build>(cut),
                              std::make_shared<const Measurements>());
    for (const Colouring colouring : {Colouring::layer, Colouring::height, Colouring::support}) {
      view.colouring = colouring;
      // The layers that are to come do not change the colours of those that are laid.
      if (colouring == Colouring::layer)
        view.range = own_range(source, view);
      else
        view.range.reset();
      const Shell a = make_shell(source, view);
      View whole;
      whole.colouring = colouring;
      whole.range = view.range;
      const Shell b = make_shell(shorter, whole);
      INFO("seed " << seed << " node " << node);
      CHECK(a.node == b.node);
      CHECK(a.radius_mm == b.radius_mm);
      CHECK(a.across == b.across);
      CHECK(a.openness == b.openness);
      CHECK(a.colour == b.colour);
    }
    CHECK(make_scene(source, view).lay_point.x_mm == source.build().nodes.x(node));
  }
}

TEST_CASE("the memory of an old shell may be used again") {
  const SceneSource source = random_source(8), other = random_source(9);
  const Shell fresh = make_shell(source, {});
  const Shell again = make_shell(source, {}, make_shell(other, {}));
  CHECK(fresh.node == again.node);
  CHECK(fresh.radius_mm == again.radius_mm);
  CHECK(fresh.colour == again.colour);
  CHECK(fresh.openness == again.openness);
  CHECK(fresh.across == again.across);
}

TEST_CASE("a spool wound from the other flange shows the mirror image") {
  random_plans::Wanted wanted;
  wanted.scatter = false;
  wanted.skewed_spool = false;
  for (std::uint64_t seed = 60; seed < 64; ++seed) {
    PlanDraft draft = random_plans::draft(seed, wanted);
    draft.fiber.section = FiberSection::flat;  // a round one's falls carry rounding on
    const Plan plan = random_plans::plan_of(draft);
    draft.traverse.start = draft.traverse.start == Side::left ? Side::right : Side::left;
    std::swap(draft.traverse.left_stop_mm, draft.traverse.right_stop_mm);
    for (WindStep& step : draft.wind.steps) std::swap(step.left_stop_mm, step.right_stop_mm);
    const Plan mirrored = random_plans::plan_of(draft);
    const Shell a = make_shell(source_of(plan, random_plans::laid(plan, 1, 0.5)), {});
    const Shell b = make_shell(source_of(mirrored, random_plans::laid(mirrored, 1, 0.5)), {});
    REQUIRE(a.node.size() == b.node.size());
    std::size_t other = 0;
    for (std::size_t row = 0; row < a.grid.rows; ++row) {
      for (std::size_t c = 0; c < a.grid.columns; ++c) {
        // Rounding to the grid of nodes is not symmetrical: a column at the very edge of a turn may see another one.
        if (a.node[a.index(row, c)] != b.node[b.index(row, a.grid.columns - 1 - c)]) ++other;
      }
    }
    INFO("seed " << seed);
    CHECK(other <= a.node.size() / 1000);
  }
}

TEST_CASE("openness: a smooth cylinder sees all of the sky, a groove less") {
  ShellGrid grid;
  grid.rows = 8;
  grid.columns = 65;
  grid.column_mm = 0.125;
  grid.stations = 8;
  std::vector<float> radius(grid.texels(), 75.0F);
  for (const std::uint8_t open : openness_of(grid, radius, 1.0)) REQUIRE(open == 255);
  // A slot d wide and d deep, 32 columns from the left: seen from its middle, d/2 from either wall, the nearest
  // horizon is d high in a distance of 5/8 d at most, and the sky along the slot is free.
  for (std::size_t row = 0; row < grid.rows; ++row) {
    for (std::size_t c = 28; c <= 36; ++c) radius[row * grid.columns + c] = 74.0F;
  }
  const auto open = openness_of(grid, radius, 1.0);
  CHECK(open[32] < 0.75 * 255.0);
  CHECK(open[32] >= 127);
  CHECK(open[3] == 255);
}

TEST_CASE("the greatest around a place, against a search") {
  Draw draw(21);
  std::vector<float> room;
  for (const std::size_t reach : {0U, 1U, 2U, 5U, 16U, 40U, 200U}) {
    std::vector<float> values(97), greatest(97);
    for (float& value : values) value = static_cast<float>(draw.between(-1.0, 1.0));
    greatest_around(values.data(), values.size(), reach, greatest.data(), room);
    for (std::size_t i = 0; i < values.size(); ++i) {
      const std::size_t from = i - std::min(i, reach), end = std::min(values.size(), i + reach + 1);
      REQUIRE(greatest[i] == *std::max_element(values.begin() + static_cast<std::ptrdiff_t>(from),
                                               values.begin() + static_cast<std::ptrdiff_t>(end)));
    }
  }
}

TEST_CASE("light falls with depth, and a rounding takes none of it") {
  CHECK(light_at_depth(0.0F) == 1.0F);
  CHECK(light_at_depth(0.1F) == 1.0F);
  for (float depth = 0.4F; depth < 1.7F; depth += 0.1F) CHECK(light_at_depth(depth) < light_at_depth(depth - 0.1F));
  CHECK(light_at_depth(1.0F) < 0.5F);
  CHECK(light_at_depth(2.0F) == light_at_depth(5.0F));
}

TEST_CASE("what lies deeper than its neighbours is darker, and a level surface is not") {
  // One layer whole, and one on it of turns four diameters apart: between them the lower one lies .87 d deeper.
  const Plan plan = synthetic::plan_of(synthetic::draft());
  const double rise = std::sqrt(0.75);
  synthetic::BuildMaker maker(plan, 16);
  maker.stroke(1, 20.0, [](double turn) {
    return synthetic::Place{0.5 + std::floor(turn + 1e-9), 50.5, Support::barrel};
  });
  maker.stroke(-1, 3.0, [rise](double turn) {
    return synthetic::Place{16.0 - 4.0 * std::floor(turn + 1e-9), 50.5 + rise, Support::valley};
  });
  const SceneSource source = source_of(plan, maker.finish(23.0));
  const Shell shell = make_shell(source, {});
  View first;
  first.last_layer = 1;
  const Shell level = make_shell(source, first);
  double deep = 0.0, flat = 0.0, top = 0.0;
  int deep_count = 0, top_count = 0;
  for (std::size_t i = 0; i < shell.node.size(); ++i) {
    const double x = shell.grid.x(i % shell.grid.columns);
    if (x < 8.0 || x > 16.0) continue;
    if (source.stroke_of(shell.node[i]) == 0) {
      deep += shell.openness[i];
      flat += level.openness[i];
      ++deep_count;
    } else {
      top += shell.openness[i];
      ++top_count;
    }
  }
  REQUIRE(deep_count > 300);
  REQUIRE(top_count > 100);
  CHECK(deep / flat < 0.6);
  CHECK(deep / deep_count < 0.6 * top / top_count);
  // By depth alone, without what the round of a fiber takes.
  for (std::size_t i = 0; i < level.node.size(); ++i) {
    if (level.grid.x(i % level.grid.columns) < 19.9) REQUIRE(level.crest_mm[i] == Approx(50.5));
  }
}

TEST_CASE("strands that lie deeper are darker, too") {
  const SceneSource source = random_source(7, 300.0);
  const Shell shell = make_shell(source, {});
  const Strands strands = make_strands(source, {}, shell, {0.0, source.plan().spool().inside_width_mm, {0.0, 7.0}});
  const Colourer colourer(source, {});
  std::size_t darker = 0;
  for (const StrandPoint& point : strands.points) {
    const Rgba own = colourer.colour(point.node);
    REQUIRE(point.colour.g <= own.g);
    darker += point.colour.g + 10 < own.g ? 1U : 0U;
  }
  CHECK(darker > 20);
  // Of even layers none of the last is.
  const Plan plan = synthetic::plan_of(synthetic::draft());
  const SceneSource even = source_of(plan, synthetic::nested(plan, 16, 3, 12, 1.02));
  const Colourer of_even(even, {});
  std::size_t last = 0;
  for (const StrandPoint& point : make_strands(even, {}, make_shell(even, {}), {0.0, 20.5, {0.0, 7.0}}).points) {
    if (even.stroke_of(point.node) != 2) continue;
    ++last;
    REQUIRE(point.colour == of_even.colour(point.node));
  }
  CHECK(last > 12 * 15);
}
