#include "ui/plot.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "scene/colouring.h"
#include "ui/style.h"

namespace laywright {
namespace {

struct Bounds {
  double x0 = 0.0, x1 = 1.0, y0 = 0.0, y1 = 1.0;
};

Bounds bounds_of(const Plot& plot) {
  Bounds b;
  bool first = true;
  for (const PlotLine& line : plot.lines) {
    for (std::size_t i = 0; i < line.x.size(); ++i) {
      b.x0 = first ? line.x[i] : std::min(b.x0, line.x[i]);
      b.x1 = first ? line.x[i] : std::max(b.x1, line.x[i]);
      b.y0 = first ? line.y[i] : std::min(b.y0, line.y[i]);
      b.y1 = first ? line.y[i] : std::max(b.y1, line.y[i]);
      first = false;
    }
    if (line.steps) b.y0 = std::min(b.y0, 0.0);  // a bar tells by its height
  }
  if (b.x1 - b.x0 < 1e-12) b.x1 = b.x0 + 1.0;
  const double slack = std::max(0.06 * (b.y1 - b.y0), 1e-6 * std::max(1.0, std::abs(b.y1)));
  if (b.y0 != 0.0) b.y0 -= slack;
  b.y1 += slack;
  return b;
}

struct Frame2 {
  ImVec2 low, high;  // of the drawing, without its figures
  Bounds b;

  [[nodiscard]] ImVec2 at(double x, double y) const {
    return {low.x + static_cast<float>((x - b.x0) / (b.x1 - b.x0)) * (high.x - low.x),
            high.y - static_cast<float>((y - b.y0) / (b.y1 - b.y0)) * (high.y - low.y)};
  }
};

void axes(ImDrawList& canvas, const Frame2& f, const Plot& plot) {
  const ImU32 grid = ImGui::GetColorU32(ImGuiCol_Border, 0.6F), ink = ImGui::GetColorU32(ImGuiCol_TextDisabled);
  float free_from = f.low.x;  // figures do not run into each other
  for (const LegendTick& tick : round_ticks(f.b.x0, f.b.x1)) {
    const float x = f.low.x + static_cast<float>(tick.share) * (f.high.x - f.low.x);
    canvas.AddLine({x, f.low.y}, {x, f.high.y}, grid);
    const float width = ImGui::CalcTextSize(tick.text.c_str()).x;
    const float left = std::clamp(x - 0.5F * width, f.low.x, f.high.x - width);
    if (left < free_from) continue;
    canvas.AddText({left, f.high.y + 2.0F}, ink, tick.text.c_str());
    free_from = left + width + em(0.7F);
  }
  float free_below = f.high.y + em(1.0F);
  for (const LegendTick& tick : round_ticks(f.b.y0, f.b.y1)) {
    const float y = f.high.y - static_cast<float>(tick.share) * (f.high.y - f.low.y);
    canvas.AddLine({f.low.x, y}, {f.high.x, y}, grid);
    if (y + 0.55F * em(1.0F) > free_below) continue;
    const float width = ImGui::CalcTextSize(tick.text.c_str()).x;
    canvas.AddText({f.low.x - width - em(0.3F), y - 0.5F * em(1.0F)}, ink, tick.text.c_str());
    free_below = y - 0.55F * em(1.0F);
  }
  canvas.AddRect(f.low, f.high, ImGui::GetColorU32(ImGuiCol_Border));
  const float wide = ImGui::CalcTextSize(plot.x_name.c_str()).x;
  canvas.AddText({f.high.x - wide, f.high.y + em(1.1F)}, ink, plot.x_name.c_str());
}

void line_of(ImDrawList& canvas, const Frame2& f, const PlotLine& line) {
  if (line.steps) {
    const float half = line.x.size() > 1 ? 0.4F * (f.at(line.x[1], 0.0).x - f.at(line.x[0], 0.0).x) : em(1.0F);
    for (std::size_t i = 0; i < line.x.size(); ++i) {
      const ImVec2 top = f.at(line.x[i], line.y[i]);
      canvas.AddRectFilled({top.x - std::max(0.5F, half), top.y}, {top.x + std::max(0.5F, half), f.high.y},
                           line.color);
    }
    return;
  }
  std::vector<ImVec2> points;
  for (std::size_t i = 0; i < line.x.size(); ++i) points.push_back(f.at(line.x[i], line.y[i]));
  canvas.AddPolyline(points.data(), static_cast<int>(points.size()), line.color, 0, em(0.12F));
}

// The title above; what the lines are below, left of the name of the axis.
void names(ImDrawList& canvas, const Frame2& f, const ImVec2& corner, const Plot& plot) {
  canvas.AddText(corner, ImGui::GetColorU32(ImGuiCol_Text), plot.title.c_str());
  if (plot.lines.size() < 2) return;
  float x = corner.x;
  const float y = f.high.y + em(1.1F);
  for (const PlotLine& line : plot.lines) {
    canvas.AddRectFilled({x, y + em(0.45F)}, {x + em(0.7F), y + em(0.65F)}, line.color);
    canvas.AddText({x + em(0.85F), y}, ImGui::GetColorU32(ImGuiCol_TextDisabled), line.name.c_str());
    x += ImGui::CalcTextSize(line.name.c_str()).x + em(1.4F);
  }
}

void hover(ImDrawList& canvas, const Frame2& f, const Plot& plot) {
  const ImVec2 mouse = ImGui::GetIO().MousePos;
  const double x = f.b.x0 + (mouse.x - f.low.x) / std::max(1.0F, f.high.x - f.low.x) * (f.b.x1 - f.b.x0);
  std::string words;
  for (const PlotLine& line : plot.lines) {
    if (line.x.empty()) continue;
    auto near = std::lower_bound(line.x.begin(), line.x.end(), x);
    if (near == line.x.end() || (near != line.x.begin() && x - *(near - 1) < *near - x)) --near;
    const auto i = static_cast<std::size_t>(near - line.x.begin());
    if (words.empty()) words = fmt::format("{}: {:.4g}", plot.x_name, line.x[i]);
    words += fmt::format("\n{}: {:.6g}", line.name, line.y[i]);
    canvas.AddCircleFilled(f.at(line.x[i], line.y[i]), em(0.22F), line.color);
  }
  if (!words.empty()) ImGui::SetTooltip("%s", words.c_str());
}

}  // namespace

void draw_plot(const Plot& plot, const ImVec2& size) {
  ImGui::InvisibleButton(plot.title.c_str(), size);
  const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
  const Frame2 f{{low.x + em(3.6F), low.y + em(1.5F)}, {high.x - em(0.6F), high.y - em(2.3F)}, bounds_of(plot)};
  ImDrawList& canvas = *ImGui::GetWindowDrawList();
  names(canvas, f, low, plot);
  if (f.high.x - f.low.x < em(3.0F) || f.high.y - f.low.y < em(1.5F)) return;
  axes(canvas, f, plot);
  canvas.PushClipRect(f.low, f.high, true);
  for (const PlotLine& line : plot.lines) line_of(canvas, f, line);
  canvas.PopClipRect();
  if (ImGui::IsItemHovered()) hover(canvas, f, plot);
}

}  // namespace laywright
