// A small plot of lines: axes with round figures, hover reads a point.
#pragma once

#include <string>
#include <vector>

#include <imgui.h>

namespace laywright {

struct PlotLine {
  std::string name;
  ImU32 color = 0;
  std::vector<double> x, y;  // equally many, x rising
  bool steps = false;        // as bars about each x
};

struct Plot {
  std::string title, x_name, y_name;
  std::vector<PlotLine> lines;
};

void draw_plot(const Plot& plot, const ImVec2& size);

}  // namespace laywright
