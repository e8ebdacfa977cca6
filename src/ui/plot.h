// A small plot of lines: axes with round figures, limits as broken lines, hover reads a point.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <imgui.h>

namespace laywright {

enum class PlotDot { full, ring, point };

struct PlotLine {
  std::string name;
  ImU32 color = 0;
  std::vector<double> x, y;     // equally many, x rising
  bool steps = false;           // as bars about each x
  std::vector<PlotDot> dots{};  // one on each point; empty: none
  bool joined = true;           // false: the dots alone
};

// A limit of what the lines may be. One that lies far off them is told, but the axis does not reach it.
struct PlotBound {
  std::string name;  // "most 8.4 N"
  double y = 0.0;
};

// A part of the plane that lines may run into: one that stands earlier keeps its name where two would run into each other.
struct PlotBand {
  std::string name;
  ImU32 color = 0;
  double x0 = 0.0, x1 = 0.0, y0 = 0.0, y1 = 0.0;
};

struct Plot {
  std::string title, x_name;
  std::vector<PlotLine> lines;
  std::vector<PlotBound> bounds;
  std::optional<double> mark_x;  // a place on the x axis that is told from all others
  std::string mark_text;         // what holds there
  std::vector<std::string>
      notes{};  // instead of the figures of the point that is hovered, for each of the first line
  std::vector<PlotBand> bands{};
  std::optional<std::pair<double, double>> y_range{};  // of the axis; none: what lines and near bounds need
};

// Room for the figures of the y axis, with what lies between.
[[nodiscard]] float left_room(const Plot& plot);

// Gives the place on the x axis that is pointed to while the mouse's button is down. Plots above each other stand aligned
// with the same `left`, the greatest of their left_room().
[[nodiscard]] std::optional<double> draw_plot(const Plot& plot, const ImVec2& size, float left);

// The value of a line at x: straight between its points, level beyond its ends. None without points.
[[nodiscard]] std::optional<double> y_at(const PlotLine& line, double x);

}  // namespace laywright
