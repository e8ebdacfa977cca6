#include "lesson/figures.h"
#include "base/quantity_text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <numeric>

#include <fmt/format.h>

namespace laywright {
namespace {

struct LayerFigure {
  int layer = 0;
  std::string_view name;
};

std::optional<LayerFigure> layer_figure(std::string_view name) {
  constexpr std::string_view start = "layer";
  if (name.substr(0, start.size()) != start) return std::nullopt;
  LayerFigure figure;
  const char* end = name.data() + name.size();
  const auto [rest, error] = std::from_chars(name.data() + start.size(), end, figure.layer);
  if (error != std::errc() || figure.layer < 1 || rest == end || *rest != '.') return std::nullopt;
  figure.name = name.substr(static_cast<std::size_t>(rest + 1 - name.data()));
  return figure;
}

struct FindingFigure {
  FindingKind kind = FindingKind::gap;
  bool places = false;  // else size
};

std::optional<FindingFigure> finding_figure(std::string_view name) {
  const std::size_t dot = name.find('.');
  if (dot == std::string_view::npos) return std::nullopt;
  const std::string_view what = name.substr(dot + 1);
  if (what != "places" && what != "size") return std::nullopt;
  for (int k = 0; k <= static_cast<int>(FindingKind::rim_overrun); ++k) {
    const auto kind = static_cast<FindingKind>(k);
    if (name.substr(0, dot) == name_of(kind)) return FindingFigure{kind, what == "places"};
  }
  return std::nullopt;
}

// One of a kind, and several.
std::array<const char*, 2> words_of(FindingKind kind) {
  switch (kind) {
    case FindingKind::gap: return {"gap", "gaps"};
    case FindingKind::flange_gap: return {"gap at a flange", "gaps at the flanges"};
    case FindingKind::pile_up: return {"pile-up", "pile-ups"};
    case FindingKind::edge_valley: return {"edge valley", "edge valleys"};
    case FindingKind::ride_up: return {"ride-up", "ride-ups"};
    case FindingKind::dropped_turn: return {"dropped turn", "dropped turns"};
    case FindingKind::bridge: return {"bridge", "bridges"};
    case FindingKind::ribbon: return {"ribbon", "ribbons"};
    case FindingKind::rim_overrun: break;
  }
  return {"overrun of the rim", "overruns of the rim"};
}

std::optional<FigureKind> kind_of_layer_figure(const LayerFigure& figure) {
  const auto of_layer = [&](std::string_view what) { return fmt::format("{} layer {}", what, figure.layer); };
  if (figure.name == "turns") return FigureKind{of_layer("turns in"), {}, "turns", 1};
  if (figure.name == "diameter") return FigureKind{of_layer("mean diameter of"), Dimension::length, "", 2};
  if (figure.name == "rise") return FigureKind{of_layer("rise of"), {}, "d", 3};
  if (figure.name == "crossings") return FigureKind{of_layer("crossings of"), {}, "", 0};
  if (figure.name == "bridged") return FigureKind{of_layer("hanging clear in"), {}, "%", 0, 100.0};
  if (figure.name == "gap_length") return FigureKind{of_layer("fiber beside gaps in"), Dimension::length, "", 1};
  return std::nullopt;
}

std::optional<double> layer_value(const LayerFigure& figure, const Measurements& m) {
  if (static_cast<std::size_t>(figure.layer) > m.layers.size()) return std::nullopt;
  const LayerRow& row = m.layers[static_cast<std::size_t>(figure.layer) - 1];
  if (figure.name == "turns") return row.turns;
  if (figure.name == "diameter") return row.mean_diameter_mm;
  if (figure.name == "rise") return row.mean_rise_d;
  if (figure.name == "crossings") return row.crossings;
  if (figure.name == "bridged") return row.bridged_share;
  return row.gap_length_mm;
}

double finding_value(const FindingFigure& figure, const Measurements& m) {
  double places = 0.0, size = 0.0;
  for (const Finding& finding : m.findings) {
    if (finding.kind != figure.kind) continue;
    places += finding.occurrences;
    size = std::max(size, finding.size_mm);
  }
  return figure.places ? places : size;
}

double gap_length(const Measurements& m) {
  double sum = 0.0;
  for (const LayerRow& row : m.layers) sum += row.gap_length_mm;
  return sum;
}

double caught_share(const LaidBuild& laid) {
  const auto caught = std::count_if(laid.drawn_off->begin(), laid.drawn_off->end(),
                                    [&](float times) { return times > laid.most_pull; });
  return static_cast<double>(caught) / static_cast<double>(laid.drawn_off->size());
}

double mean_pull(const LaidBuild& laid) {
  const double sum = std::accumulate(laid.drawn_off->begin(), laid.drawn_off->end(), 0.0);
  return sum / static_cast<double>(laid.drawn_off->size());
}

// Over whole strokes; none before the second is complete.
std::optional<double> turns_per_double_stroke(const Build& build) {
  if (build.strokes.size() < 3) return std::nullopt;
  const double nodes = static_cast<double>(build.strokes.back().first_node);
  const double strokes = static_cast<double>(build.strokes.size() - 1);
  return 2.0 * nodes / build.stations_per_turn / strokes;
}

}  // namespace

std::optional<FigureKind> figure_kind(std::string_view name) {
  if (name == "turns") return FigureKind{"turns", {}, "turns", 0};
  if (name == "length") return FigureKind{"length", Dimension::length, "", 0};
  if (name == "layers") return FigureKind{"layers", {}, "layers", 0};
  if (name == "fill") return FigureKind{"fill", {}, "%", 1, 100.0};
  if (name == "gap_length") return FigureKind{"fiber beside gaps", Dimension::length, "", 1};
  if (name == "rim_clearance") return FigureKind{"left to the rim", Dimension::length, "", 2};
  if (name == "outer.left") return FigureKind{"outer diameter, left edge", Dimension::length, "", 2};
  if (name == "outer.middle") return FigureKind{"outer diameter, middle", Dimension::length, "", 2};
  if (name == "outer.right") return FigureKind{"outer diameter, right edge", Dimension::length, "", 2};
  if (name == "outer.greatest") return FigureKind{"greatest outer diameter", Dimension::length, "", 2};
  if (name == "edges_over_middle") return FigureKind{"edges over the middle", Dimension::length, "", 2};
  if (name == "edge_difference") return FigureKind{"one edge over the other", Dimension::length, "", 2};
  if (name == "ratio") return FigureKind{"turns per double stroke", {}, "", 3};
  if (name == "edges.ridge") return FigureKind{"higher ridge of the two", Dimension::length, "", 2};
  if (name == "edges.valley") return FigureKind{"deeper valley of the two", Dimension::length, "", 2};
  if (name == "drawn_off.caught") return FigureKind{"fiber that catches", {}, "%", 1, 100.0};
  if (name == "drawn_off.mean") return FigureKind{"mean pull to draw it off", {}, "times", 2};
  if (const auto layer = layer_figure(name)) return kind_of_layer_figure(*layer);
  if (const auto finding = finding_figure(name)) {
    const auto [one, several] = words_of(finding->kind);
    if (finding->places) return FigureKind{fmt::format("number of {}", several), {}, "", 0};
    return FigureKind{fmt::format("greatest {}", one), Dimension::length, "", 2};
  }
  return std::nullopt;
}

std::optional<double> figure_of(std::string_view name, const LaidBuild& laid) {
  const Build& build = *laid.build;
  const Measurements& m = *laid.measurements;
  const OuterDiameter& outer = m.outer_diameter;
  if (name == "turns") return build.turns;
  if (name == "length") return build.length_mm;
  if (name == "layers") return static_cast<double>(build.strokes.size());
  if (name == "fill") return m.fill_factor;
  if (name == "gap_length") return gap_length(m);
  if (name == "rim_clearance") return m.rim_clearance_mm;
  if (name == "outer.left") return outer.left_mm;
  if (name == "outer.middle") return outer.middle_mm;
  if (name == "outer.right") return outer.right_mm;
  if (name == "outer.greatest") return outer.greatest_mm;
  if (name == "edges_over_middle") return 0.25 * (outer.left_mm + outer.right_mm) - 0.5 * outer.middle_mm;
  if (name == "edge_difference") return 0.5 * std::abs(outer.left_mm - outer.right_mm);
  if (name == "ratio") return turns_per_double_stroke(build);
  if (name == "edges.ridge" || name == "edges.valley") {
    if (!m.edges) return std::nullopt;
    const auto [left, right] = *m.edges;
    return name == "edges.ridge" ? std::max(left.ridge_mm, right.ridge_mm)
                                 : std::max(left.valley_mm, right.valley_mm);
  }
  if (name.substr(0, drawn_off_start.size()) == drawn_off_start) {
    if (laid.drawn_off == nullptr || laid.drawn_off->empty()) return std::nullopt;
    return name == "drawn_off.caught" ? caught_share(laid) : mean_pull(laid);
  }
  if (const auto layer = layer_figure(name)) return layer_value(*layer, m);
  if (const auto finding = finding_figure(name)) return finding_value(*finding, m);
  return std::nullopt;
}

std::string figure_text(const FigureKind& kind, double value, bool inch) {
  if (!kind.dimension) {
    const std::string number = figure(value * kind.shown_times, kind.decimals);
    if (kind.suffix.empty()) return number;
    return number + (kind.suffix == "%" ? " %" : " " + kind.suffix);
  }
  const bool far = std::abs(value) >= 1000.0;  // mm
  return far ? amount_text(Amount::fiber_length, value / 1000.0, std::min(kind.decimals, 1), inch)
             : amount_text(Amount::small_length, value, 2, inch);
}

}  // namespace laywright
