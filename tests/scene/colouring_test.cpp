// Colours and legends: what they say is what the build has.
#include <catch2/catch.hpp>

#include "scene/palette.h"
#include "scenes.h"

using namespace laywright;
using scenes::Draw;
using scenes::random_source;
using scenes::source_of;

TEST_CASE("ticks stand at round figures, three to nine of them") {
  const auto texts = [](double low, double high) {
    std::vector<std::string> found;
    for (const LegendTick& tick : round_ticks(low, high)) found.push_back(tick.text);
    return found;
  };
  CHECK(texts(0.0, 1.0) == std::vector<std::string>{"0.0", "0.2", "0.4", "0.6", "0.8", "1.0"});
  CHECK(texts(-3.0, 3.0) == std::vector<std::string>{"-3", "-2", "-1", "0", "1", "2", "3"});
  CHECK(texts(0.0, 25.0) == std::vector<std::string>{"0", "5", "10", "15", "20", "25"});
  CHECK(texts(0.0, 0.03).front() == "0.000");
  CHECK(texts(0.0, 2000.0) == std::vector<std::string>{"0", "500", "1,000", "1,500", "2,000"});
  Draw draw(1);
  for (int i = 0; i < 2000; ++i) {
    const double low = draw.between(-10.0, 10.0), high = low + std::exp(draw.between(-8.0, 8.0));
    const auto ticks = round_ticks(low, high);
    REQUIRE(ticks.size() >= 3);
    REQUIRE(ticks.size() <= 9);
    for (const LegendTick& tick : ticks) {
      REQUIRE(tick.share >= -1e-9);
      REQUIRE(tick.share <= 1.0 + 1e-9);
      std::string number = tick.text;
      std::erase(number, ',');
      REQUIRE(std::stod(number) == Approx(low + tick.share * (high - low)).margin(1e-9 * (high - low) + 1e-12));
    }
  }
}

TEST_CASE("scales: published ends and middles, and they get lighter all the way") {
  CHECK(viridis(0.0) == Rgba{0x44, 0x01, 0x54, 255});
  CHECK(viridis(1.0) == Rgba{0xFD, 0xE7, 0x25, 255});
  CHECK(viridis(-5.0) == viridis(0.0));
  CHECK(purple_orange(0.5) == Rgba{0xF7, 0xF7, 0xF7, 255});
  CHECK(purple_orange(0.0) == Rgba{0x2D, 0x00, 0x4B, 255});
  CHECK(purple_orange(1.0) == Rgba{0x7F, 0x3B, 0x08, 255});
  // Rec. 709 luma, a stand-in for lightness.
  const auto luma = [](Rgba c) { return 0.2126 * c.r + 0.7152 * c.g + 0.0722 * c.b; };
  for (int i = 1; i <= 50; ++i) CHECK(luma(viridis(i / 50.0)) > luma(viridis((i - 1) / 50.0)));
  for (int i = 1; i <= 25; ++i) CHECK(luma(purple_orange(i / 50.0)) > luma(purple_orange((i - 1) / 50.0)));
  for (int i = 26; i <= 50; ++i) CHECK(luma(purple_orange(i / 50.0)) < luma(purple_orange((i - 1) / 50.0)));
}

TEST_CASE("rise and gap of a nested wind have their closed forms") {
  const double pitch = 1.2;
  const Plan plan = synthetic::plan_of(synthetic::draft());
  const SceneSource source = source_of(plan, synthetic::nested(plan, 16, 3, 12, pitch));
  const double rise = std::sqrt(1.0 - 0.25 * pitch * pitch);
  std::size_t with_rise = 0;
  for (std::size_t node = 0; node < source.build().nodes.size(); ++node) {
    CHECK(*gap_d(source, node) == Approx(pitch - 1.0).margin(1e-6));
    const auto is = rise_d(source, node);
    if (source.stroke_of(node) == 0) CHECK_FALSE(is);
    if (!is) continue;
    ++with_rise;
    CHECK(*is == Approx(rise).margin(1e-6));
  }
  // All but the outermost turn of layers 2 and 3, which lies beside no pair.
  CHECK(with_rise == 2 * 11 * 16);
}

TEST_CASE("neighbours in x against a search through the layer") {
  std::size_t same = 0, all = 0;
  for (std::uint64_t seed = 300; seed < 310; ++seed) {
    const SceneSource source = random_source(seed);
    const Build& build = source.build();
    Draw draw(seed);
    for (int i = 0; i < 200; ++i) {
      const std::size_t node = draw.below(build.nodes.size()), stroke = build.stroke_of(node);
      REQUIRE(source.stroke_of(node) == stroke);
      double left = -HUGE_VAL, right = HUGE_VAL;
      for (std::size_t k = build.strokes[stroke].first_node; k < build.end_of(stroke); ++k) {
        if (k % source.stations() != node % source.stations() || k == node) continue;
        const double x = build.nodes.x(k);
        if (x <= build.nodes.x(node)) left = std::max(left, x);
        if (x > build.nodes.x(node)) right = std::min(right, x);
      }
      const NodeFacts facts = facts_of(source, node);
      const bool left_same = facts.left ? build.nodes.x(*facts.left) == left : std::isinf(left);
      const bool right_same = facts.right ? build.nodes.x(*facts.right) == right : std::isinf(right);
      same += left_same && right_same ? 1U : 0U;
      ++all;
    }
  }
  // A turn that leapt over more than four others is missed: rare.
  CHECK(same >= all * 99 / 100);
}

TEST_CASE("each colouring has a legend, and colours come from it") {
  const SceneSource source = random_source(7, 300.0);
  for (const Colouring colouring :
       {Colouring::material, Colouring::layer, Colouring::direction, Colouring::rise, Colouring::gap,
        Colouring::height, Colouring::support, Colouring::length, Colouring::tension, Colouring::payoff,
        Colouring::payoff_left, Colouring::payoff_right}) {
    View view;
    view.colouring = colouring;
    const Colourer colourer(source, view);
    const Legend& legend = colourer.legend();
    CHECK_FALSE(legend.title.empty());
    CHECK(legend.entries.empty() != legend.scale.empty());
    if (!legend.scale.empty()) {
      CHECK(legend.low < legend.high);
      CHECK(legend.ticks.size() >= 3);
      CHECK(legend.unit.empty() == (colouring == Colouring::layer));
    }
    Draw draw(1);
    for (int i = 0; i < 300; ++i) {
      const std::size_t node = draw.below(source.build().nodes.size());
      const Rgba colour = colourer.colour(node);
      bool known = std::find(legend.scale.begin(), legend.scale.end(), colour) != legend.scale.end();
      for (const LegendEntry& entry : legend.entries) known = known || entry.colour == colour;
      REQUIRE((known || !colourer.value(node)));
    }
  }
}

TEST_CASE("the pull that draws a turn off is the payoff's, on a scale that begins at that of winding") {
  const SceneSource source = random_source(7, 300.0);
  for (const auto& [colouring, way] :
       {std::pair(Colouring::payoff, DrawOff::side), std::pair(Colouring::payoff_left, DrawOff::over_left),
        std::pair(Colouring::payoff_right, DrawOff::over_right)}) {
    View view;
    view.colouring = colouring;
    const Colourer colourer(source, view);
    CHECK(colourer.legend().low == 1.0);
    CHECK(colourer.legend().high >= 1.1);
    Progress progress;
    const PayoffRun run = pay_off(source.plan(), source.build(), {way, {}, true}, progress);
    bool differ = false;
    for (std::size_t node = 0; node < source.build().nodes.size(); node += 7) {
      REQUIRE(*colourer.value(node) == run.multiples[node]);
      differ = differ || run.multiples[node] != run.multiples[0];
    }
    CHECK(differ);
  }
}

TEST_CASE("lengths and heights follow the units") {
  const SceneSource source = random_source(7, 300.0);
  View view;
  view.colouring = Colouring::length;
  const std::size_t node = source.build().nodes.size() / 2;
  CHECK(*Colourer(source, view).value(node) == Approx(source.line().at(node) / 1000.0));
  view.units = Units::inch;
  CHECK(*Colourer(source, view).value(node) == Approx(source.line().at(node) / 304.8));
  CHECK(Colourer(source, view).legend().unit == "ft");
  view.colouring = Colouring::height;
  const double inch = *Colourer(source, view).value(node);
  view.units = Units::metric;
  CHECK(*Colourer(source, view).value(node) == Approx(25.4 * inch));
}

TEST_CASE("tension falls with the radius where the torque is constant, and is grey where no plan says it") {
  PlanDraft draft = synthetic::draft();
  draft.wind.tension_N = 2.0;
  draft.wind.turns = 60.0;
  draft.wind.length_mm.reset();
  draft.takeup = Takeup{};  // of constant torque
  const Plan plan = synthetic::plan_of(draft);
  const SceneSource source = source_of(plan, random_plans::laid(plan, 1, 0.5));
  View view;
  view.colouring = Colouring::tension;
  const Colourer colourer(source, view);
  const NodeStore& nodes = source.build().nodes;
  const std::size_t last = nodes.size() - 1;
  // T r = M, the torque of the start.
  CHECK(*colourer.value(last) == Approx(2.0 * nodes.r(0) / nodes.r(last)).epsilon(1e-9));
  CHECK(*colourer.value(last) < 1.98);
  CHECK(colourer.legend().low <= *colourer.value(last));
  CHECK(colourer.legend().low > 1.5);
  CHECK(colourer.legend().high >= 2.0);
  CHECK(colourer.legend().unit == "N");
  view.units = Units::inch;
  CHECK(*Colourer(source, view).value(last) == Approx(*colourer.value(last) / 4.4482216152605));
  draft.wind.tension_N.reset();
  const Plan less = synthetic::plan_of(draft);
  const SceneSource silent = source_of(less, random_plans::laid(less, 1, 0.5));
  CHECK_FALSE(Colourer(silent, view).value(last));
  CHECK(Colourer(silent, view).legend().entries.size() == 1);
}

TEST_CASE("a scale reaches from end to end of what is shown, in round figures") {
  const SceneSource source = random_source(7, 300.0);
  View view;
  view.colouring = Colouring::length;
  const Legend legend = Colourer(source, view).legend();
  const double total = source.line().total() / 1000.0;
  CHECK(legend.low == 0.0);
  CHECK(legend.high >= 0.98 * total);
  CHECK(legend.high <= 1.4 * total);
  CHECK(legend.ticks.back().share == Approx(1.0));
}

TEST_CASE("turn and length are inverse to each other") {
  const SceneSource source = random_source(11);
  for (double share = 0.0; share <= 1.0; share += 0.07) {
    const double turn = share * source.build().turns;
    CHECK(turn_at_length(source, length_at_turn(source, turn)) == Approx(turn).margin(1e-9));
  }
  CHECK(turn_at_length(source, -1.0) == 0.0);
  CHECK(turn_at_length(source, 1e12) == source.build().turns);
  CHECK(length_at_turn(source, 1e12) == Approx(source.line().total()));
}

TEST_CASE("a payoff that is stopped leaves nothing, and comes when it is asked for again") {
  const SceneSource source = random_source(3, 60.0);
  Progress stopped;
  stopped.cancel();
  CHECK_FALSE(make_ready(source, Colouring::payoff_left, stopped));
  CHECK(source.payoff_forces(DrawOff::over_left, stopped) == nullptr);
  CHECK(make_ready(source, Colouring::layer, stopped));  // needs none
  Progress free;
  REQUIRE(make_ready(source, Colouring::payoff_left, free));
  const LatePayoff::Forces forces = source.payoff_forces(DrawOff::over_left, free);
  REQUIRE(forces);
  CHECK(forces->size() == source.build().nodes.size());
  // It is kept: who is stopped later has it, too.
  CHECK(source.payoff_forces(DrawOff::over_left, stopped) == forces);
}

namespace {

// Nested layers of turns that lie so far apart, mm; the plan's fiber is 1 mm thick, and its pitch 1 mm.
SceneSource with_pitch(double pitch_mm) {
  const Plan plan = synthetic::plan_of(synthetic::draft());
  return source_of(plan, synthetic::nested(plan, 16, 3, 12, pitch_mm));
}

// But for what a scale of 64 colours leaves between two of them.
bool are_alike(Rgba a, Rgba b) {
  return std::abs(a.r - b.r) <= 6 && std::abs(a.g - b.g) <= 6 && std::abs(a.b - b.b) <= 6;
}

// How far a colour is from grey, 0 to 255.
int hue_strength(Rgba c) { return std::max({c.r, c.g, c.b}) - std::min({c.r, c.g, c.b}); }

double share_neutral(const SceneSource& source, const View& view) {
  const Colourer colourer(source, view);
  std::size_t neutral = 0, all = 0;
  for (std::size_t node = 0; node < source.build().nodes.size(); ++node) {
    if (!colourer.value(node)) continue;
    ++all;
    neutral += hue_strength(colourer.colour(node)) < 40 ? 1U : 0U;
  }
  return static_cast<double>(neutral) / static_cast<double>(all);
}

}  // namespace

TEST_CASE(
    "two builds side by side have one scale: the same value, the same colour, and the sound one stays neutral") {
  const SceneSource sound = with_pitch(1.02), open = with_pitch(1.6);
  for (const Colouring colouring : {Colouring::gap, Colouring::rise, Colouring::height, Colouring::length}) {
    View view;
    view.colouring = colouring;
    view.range = common_range(sound, open, view);
    REQUIRE(view.range);
    CHECK(view.range == common_range(open, sound, view));
    const Colourer a(sound, view), b(open, view);
    CHECK(a.legend().scale == b.legend().scale);
    CHECK(a.legend().low == b.legend().low);
    CHECK(a.legend().high == b.legend().high);
    for (const Colourer* const one : {&a, &b}) {
      const SceneSource& source = one == &a ? sound : open;
      for (std::size_t node = 0; node < source.build().nodes.size(); node += 5) {
        if (const auto is = one->value(node)) REQUIRE(are_alike(one->colour(node), scale_colour(*view.range, *is)));
      }
    }
  }
  // The gaps are .02 d and .6 d; half a diameter is the plan's limit.
  View view;
  view.colouring = Colouring::gap;
  view.range = common_range(sound, open, view);
  CHECK(share_neutral(sound, view) > 0.9);
  CHECK(share_neutral(open, view) < 0.1);
  CHECK(view.range->low == 0.0);
  CHECK(view.range->high == Approx(1.0));
  // The rise of the even one is the middle: sqrt(1 - .51^2) is .86, of the open one sqrt(1 - .8^2), .6.
  view.colouring = Colouring::rise;
  view.range = common_range(sound, open, view);
  CHECK(view.range->neutral == Approx(0.85));
  CHECK(share_neutral(sound, view) > 0.9);
}

TEST_CASE("a sound wind is neutral by itself, too") {
  const SceneSource sound = with_pitch(1.02);
  for (const Colouring colouring : {Colouring::gap, Colouring::rise}) {
    View view;
    view.colouring = colouring;
    CHECK(share_neutral(sound, view) > 0.9);
  }
}

TEST_CASE("a range of another colouring, or in other units, is not heeded") {
  const SceneSource source = with_pitch(1.02);
  View view;
  view.colouring = Colouring::gap;
  const double own = Colourer(source, view).legend().high;
  view.range = ColourRange{Colouring::gap, Units::metric, 0.0, 0.0, 7.0};
  CHECK(Colourer(source, view).legend().high == 7.0);
  view.range->colouring = Colouring::rise;
  CHECK(Colourer(source, view).legend().high == own);
  view.range->colouring = Colouring::gap;
  view.range->units = Units::inch;
  CHECK(Colourer(source, view).legend().high == own);
}

TEST_CASE("a common range of a payoff waits until both are known, and computes neither") {
  const SceneSource a = random_source(3, 60.0), b = random_source(4, 60.0);
  View view;
  view.colouring = Colouring::payoff;
  Progress progress;
  CHECK_FALSE(common_range(a, b, view));
  REQUIRE(make_ready(a, view.colouring, progress));
  CHECK_FALSE(common_range(a, b, view));
  CHECK_FALSE(b.knows_payoff(DrawOff::side));
  REQUIRE(make_ready(b, view.colouring, progress));
  const auto both = common_range(a, b, view);
  REQUIRE(both);
  CHECK(both->neutral == 1.0);
}

TEST_CASE("a layer's colour is its own, lighter from layer to layer outward, and never yellow") {
  for (const std::size_t layers : {2U, 6U, 17U, 60U}) {
    const auto luma = [](Rgba c) { return 0.2126 * c.r + 0.7152 * c.g + 0.0722 * c.b; };
    for (std::size_t layer = 1; layer <= layers; ++layer) {
      const Rgba colour = layer_rgba(layer, layers);
      CHECK(std::min<int>(colour.r, colour.g) < 130);  // lime and yellow have much of both
      if (layer > 2) CHECK(luma(colour) > luma(layer_rgba(layer - 2, layers)));
      for (std::size_t other = 1; other < layer; ++other) REQUIRE_FALSE(layer_rgba(other, layers) == colour);
    }
  }
  CHECK(layer_rgba(1, 1).a == 255);
}

TEST_CASE("the legend of layers has a band for each, with round numbers beside it") {
  const SceneSource source = random_source(7, 300.0);
  const std::size_t layers = source.build().strokes.size();
  View view;
  view.last_layer = 2;  // what is peeled away does not change the colours of what stays
  const Legend legend = Colourer(source, view).legend();
  REQUIRE(legend.scale.size() == layers);
  for (std::size_t layer = 1; layer <= layers; ++layer) {
    CHECK(legend.scale[layer - 1] == layer_rgba(layer, layers));
    const std::size_t node = source.build().strokes[layer - 1].first_node;
    CHECK(Colourer(source, view).colour(node) == legend.scale[layer - 1]);
  }
  CHECK(legend.ticks.front().text == "1");
  for (const LegendTick& tick : legend.ticks) {
    const double layer = std::stod(tick.text);
    CHECK(tick.share == Approx((layer - 0.5) / static_cast<double>(layers)));
  }
  // Beside a wind of more layers, a layer has the colour that it has there.
  const SceneSource more = random_source(7, 500.0);
  REQUIRE(more.build().strokes.size() > layers);
  view.range = common_range(source, more, view);
  CHECK(Colourer(source, view).colour(0) == Colourer(more, view).colour(0));
  CHECK(Colourer(source, view).legend().scale.size() == more.build().strokes.size());
}

TEST_CASE("numbers stand on the face of a cut, each on its layer") {
  const Plan plan = synthetic::plan_of(synthetic::draft());
  const SceneSource source = source_of(plan, synthetic::nested(plan, 16, 5, 20, 1.0));
  View view;
  view.wedge = Sector{0.5, 2.0};
  const Scene scene = make_scene(source, view);
  REQUIRE(scene.layer_numbers.size() == 10);  // on both faces
  for (const LayerNumber& number : scene.layer_numbers) {
    // Nested layers rise by sqrt(3) / 2.
    CHECK(radius_of(number.place) == Approx(50.5 + (number.layer - 1) * std::sqrt(0.75)).margin(1e-5));
    CHECK(std::abs(number.place.x - 10.25) < 1.0);
  }
  CHECK(glm::dot(scene.layer_numbers.front().facing, scene.layer_numbers.back().facing) < 0.3);
  view.first_layer = 3;
  CHECK(make_scene(source, view).layer_numbers.size() == 6);
  view.colouring = Colouring::gap;
  CHECK(make_scene(source, view).layer_numbers.empty());
}
