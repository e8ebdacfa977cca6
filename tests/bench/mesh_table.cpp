// Lays plans at half, once and twice the stations that the model asks for, and prints how far the measurements move.
//
//   mesh_table             every sample but the long one
//   mesh_table PLAN...     these plans
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <string>
#include <vector>

#include "lay/lay.h"
#include "measure/measurements.h"
#include "plan/plan_file.h"

namespace {

using namespace laywright;

constexpr std::array fidelities{0.5, 1.0, 2.0};

struct Figure {
  const char* name;
  const char* format;
  double value;
};

double turns_per_layer(const Measurements& measured) {
  // The last layer was cut short by the end of the wind.
  const std::size_t whole = measured.layers.size() - 1;
  double turns = 0.0;
  for (std::size_t i = 0; i < whole; ++i) turns += measured.layers[i].turns;
  return whole > 0 ? turns / static_cast<double>(whole) : measured.layers.front().turns;
}

double findings(const Measurements& measured) {
  double occurrences = 0.0;
  for (const Finding& finding : measured.findings) occurrences += finding.occurrences;
  return occurrences;
}

std::vector<Figure> figures(const Build& build, const Measurements& measured) {
  double gaps = 0.0;
  for (const LayerRow& layer : measured.layers) gaps += layer.gap_length_mm * 1e-3;
  const OuterDiameter& outer = measured.outer_diameter;
  return {{"stations", "{:.0f}", static_cast<double>(build.stations_per_turn)},
          {"left mm", "{:.3f}", outer.left_mm},
          {"middle mm", "{:.3f}", outer.middle_mm},
          {"right mm", "{:.3f}", outer.right_mm},
          {"fill", "{:.4f}", measured.fill_factor},
          {"turns/layer", "{:.2f}", turns_per_layer(measured)},
          {"gaps m", "{:.3f}", gaps},
          {"findings", "{:.0f}", static_cast<double>(measured.findings.size())},
          {"occurrences", "{:.0f}", findings(measured)}};
}

std::string change(double from, double to) {
  if (from == to) return "0 %";
  if (from == 0.0) return "new";
  return fmt::format("{:+.2f} %", 100.0 * (to - from) / std::abs(from));
}

void print_row(const std::string& head, const std::vector<Figure>& row) {
  fmt::print("  {:<12}", head);
  for (const Figure& figure : row) fmt::print("{:>13}", fmt::format(fmt::runtime(figure.format), figure.value));
  fmt::print("\n");
}

void print_changes(const std::string& head, const std::vector<Figure>& from, const std::vector<Figure>& to) {
  fmt::print("  {:<12}{:>13}", head, "");
  for (std::size_t i = 1; i < from.size(); ++i) fmt::print("{:>13}", change(from[i].value, to[i].value));
  fmt::print("\n");
}

void print_table(const Plan& plan, const std::string& name) {
  std::vector<std::vector<Figure>> rows;
  for (const double fidelity : fidelities) {
    Progress progress;
    const Build build = lay(plan, {1, fidelity}, progress).value();
    rows.push_back(figures(build, measure(plan, build, progress)));
  }
  fmt::print("\n{}\n  {:<12}", name, "");
  for (const Figure& figure : rows.front()) fmt::print("{:>13}", figure.name);
  fmt::print("\n");
  print_row("half", rows[0]);
  print_row("once", rows[1]);
  print_row("twice", rows[2]);
  print_changes("half, once", rows[0], rows[1]);
  print_changes("once, twice", rows[1], rows[2]);
  std::fflush(stdout);
}

std::vector<std::string> samples() {
  std::vector<std::string> paths;
  for (const auto& entry : std::filesystem::directory_iterator(LAYWRIGHT_SAMPLES)) {
    const std::string name = entry.path().filename().string();
    if (name.ends_with(".lay.toml") && name != "long.lay.toml") paths.push_back(entry.path().string());
  }
  std::sort(paths.begin(), paths.end());
  return paths;
}

}  // namespace

int main(int argc, char** argv) {
  const std::vector<std::string> given(argv + 1, argv + argc);
  for (const std::string& path : given.empty() ? samples() : given) {
    const Result<Plan> plan = load_plan(path);
    if (!plan.ok()) {
      for (const Issue& issue : plan.issues()) fmt::print(stderr, "{}\n", to_text(issue));
      return 1;
    }
    print_table(plan.value(), std::filesystem::path(path).filename().string());
  }
  return 0;
}
