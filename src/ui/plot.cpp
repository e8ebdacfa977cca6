#include "ui/plot.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "scene/colouring.h"
#include "ui/style.h"

namespace laywright {
namespace {

struct Bounds {
  double x0 = 0.0, x1 = 1.0, y0 = 0.0, y1 = 1.0;
};

void span_lines(const Plot& plot, Bounds& b) {
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
}

// A limit that is near is worth some of the height; one far off would leave nothing to see of the lines.
void reach_bounds(const Plot& plot, Bounds& b) {
  const double near = std::max(b.y1 - b.y0, 0.15 * std::max(std::abs(b.y0), std::abs(b.y1)));
  const Bounds lines = b;
  for (const PlotBound& bound : plot.bounds) {
    if (bound.y < lines.y0 - near || bound.y > lines.y1 + near) continue;
    b.y0 = std::min(b.y0, bound.y);
    b.y1 = std::max(b.y1, bound.y);
  }
}

Bounds bounds_of(const Plot& plot) {
  Bounds b;
  span_lines(plot, b);
  reach_bounds(plot, b);
  if (b.x1 - b.x0 < 1e-12) b.x1 = b.x0 + 1.0;
  // What stays the same is a level line in the middle, not a wild one at the edge of rounding.
  const double size = std::max(std::abs(b.y0), std::abs(b.y1));
  const bool level = b.y1 - b.y0 <= 1e-6 * size;
  const double slack = level ? (size > 0.0 ? 0.1 * size : 1.0) : 0.06 * (b.y1 - b.y0);
  if (b.y0 != 0.0 || level) b.y0 -= slack;
  b.y1 += slack;
  if (plot.y_range) std::tie(b.y0, b.y1) = *plot.y_range;
  return b;
}

struct Frame2 {
  ImVec2 low, high;  // of the drawing, without its figures
  Bounds b;

  [[nodiscard]] ImVec2 at(double x, double y) const {
    return {low.x + static_cast<float>((x - b.x0) / (b.x1 - b.x0)) * (high.x - low.x),
            high.y - static_cast<float>((y - b.y0) / (b.y1 - b.y0)) * (high.y - low.y)};
  }
  [[nodiscard]] double x_of(float px) const {
    return std::clamp(b.x0 + (px - low.x) / std::max(1.0F, high.x - low.x) * (b.x1 - b.x0), b.x0, b.x1);
  }
};

float row() { return ImGui::GetTextLineHeight(); }

// Room for the title above, and for two rows of words below.
Frame2 frame_in(const ImVec2& low, const ImVec2& high, float left, const Bounds& b) {
  return {{low.x + left, low.y + row() + em(0.35F)}, {high.x - em(0.5F), high.y - 2.0F * row() - em(0.35F)}, b};
}

// Every which tick has its figure, so that figures of such a size do not run into each other.
std::size_t stride_for(const std::vector<LegendTick>& ticks, float length, float size) {
  if (ticks.size() < 2) return 1;
  const float apart = static_cast<float>(ticks[1].share - ticks[0].share) * length;
  return static_cast<std::size_t>(std::ceil(size / std::max(1.0F, apart)));
}

void x_axis(ImDrawList& canvas, const Frame2& f, ImU32 grid, ImU32 ink) {
  const std::vector<LegendTick> ticks = round_ticks(f.b.x0, f.b.x1);
  float widest = 0.0F;
  for (const LegendTick& tick : ticks) widest = std::max(widest, width_of(tick.text));
  const std::size_t stride = stride_for(ticks, f.high.x - f.low.x, widest + em(0.7F));
  for (std::size_t i = 0; i < ticks.size(); ++i) {
    const float x = f.low.x + static_cast<float>(ticks[i].share) * (f.high.x - f.low.x);
    canvas.AddLine({x, f.low.y}, {x, f.high.y}, grid);
    if (i % stride != 0) continue;
    const float width = width_of(ticks[i].text);
    const float left = std::clamp(x - 0.5F * width, f.low.x, std::max(f.low.x, f.high.x - width));
    canvas.AddText({left, f.high.y + em(0.15F)}, ink, ticks[i].text.c_str());
  }
}

void y_axis(ImDrawList& canvas, const Frame2& f, ImU32 grid, ImU32 ink) {
  const std::vector<LegendTick> ticks = round_ticks(f.b.y0, f.b.y1);
  const std::size_t stride = stride_for(ticks, f.high.y - f.low.y, 1.1F * row());
  for (std::size_t i = 0; i < ticks.size(); ++i) {
    const float y = f.high.y - static_cast<float>(ticks[i].share) * (f.high.y - f.low.y);
    canvas.AddLine({f.low.x, y}, {f.high.x, y}, grid);
    if (i % stride != 0) continue;
    canvas.AddText({f.low.x - width_of(ticks[i].text) - em(0.3F), y - 0.5F * row()}, ink, ticks[i].text.c_str());
  }
}

// Thin ones are seen still.
void bands_of(ImDrawList& canvas, const Frame2& f, const std::vector<PlotBand>& bands) {
  for (const PlotBand& band : bands) {
    const ImVec2 low = f.at(band.x0, band.y1), high = f.at(band.x1, band.y0);
    const float middle = 0.5F * (low.y + high.y), half = std::max(0.5F * (high.y - low.y), em(0.06F));
    canvas.AddRectFilled({low.x, middle - half}, {high.x, middle + half}, band.color);
  }
}

// At the right end of each, where there is room.
void band_names(ImDrawList& canvas, const Frame2& f, const std::vector<PlotBand>& bands) {
  std::vector<ImVec2> named;
  for (const PlotBand& band : bands) {
    const float width = width_of(band.name);
    const ImVec2 end = f.at(band.x1, 0.5 * (band.y0 + band.y1)), at{end.x - width - em(0.3F), end.y - 0.5F * row()};
    const bool hidden = at.x < f.at(band.x0, band.y0).x || at.y < f.low.y || at.y + row() > f.high.y;
    const bool taken = std::any_of(named.begin(), named.end(), [&](const ImVec2& other) {
      return std::abs(other.y - at.y) < row() && std::abs(other.x - at.x) < em(2.5F);
    });
    if (hidden || taken) continue;
    named.push_back(at);
    canvas.AddRectFilled({at.x - em(0.15F), at.y}, {at.x + width + em(0.15F), at.y + row()},
                         ImGui::GetColorU32(ImGuiCol_WindowBg, 0.85F), em(0.2F));
    canvas.AddText(at, ImGui::GetColorU32(ImGuiCol_Text), band.name.c_str());
  }
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
  if (!line.joined) return;
  std::vector<ImVec2> points;
  for (std::size_t i = 0; i < line.x.size(); ++i) points.push_back(f.at(line.x[i], line.y[i]));
  canvas.AddPolyline(points.data(), static_cast<int>(points.size()), line.color, 0, em(0.12F));
}

// Whole also at the frame's edge.
void dots_of(ImDrawList& canvas, const Frame2& f, const PlotLine& line) {
  for (std::size_t i = 0; i < line.dots.size(); ++i) {
    const ImVec2 at = f.at(line.x[i], line.y[i]);
    canvas.AddCircleFilled(at, em(line.dots[i] == PlotDot::point ? 0.14F : 0.3F), line.color);
    if (line.dots[i] == PlotDot::ring) canvas.AddCircleFilled(at, em(0.17F), ImGui::GetColorU32(ImGuiCol_WindowBg));
  }
}

ImU32 bound_color() { return ImGui::GetColorU32(ImGuiCol_Text, 0.75F); }

void broken_line(ImDrawList& canvas, const ImVec2& from, const ImVec2& to) {
  const float dash = em(0.45F);
  for (float x = from.x; x < to.x; x += 2.0F * dash) {
    canvas.AddLine({x, from.y}, {std::min(x + dash, to.x), to.y}, bound_color(), em(0.09F));
  }
}

void mark(ImDrawList& canvas, const Frame2& f, const Plot& plot) {
  if (!plot.mark_x) return;
  const double x = std::clamp(*plot.mark_x, f.b.x0, f.b.x1);
  const ImU32 ink = ImGui::GetColorU32(ImGuiCol_Text);
  const float px = f.at(x, f.b.y0).x;
  canvas.AddLine({px, f.low.y}, {px, f.high.y}, ink, em(0.1F));
  for (const PlotLine& line : plot.lines) {
    const std::optional<double> y = y_at(line, x);
    if (!y || line.steps) continue;
    canvas.AddCircleFilled(f.at(x, *y), em(0.28F), ink);
    canvas.AddCircleFilled(f.at(x, *y), em(0.17F), line.color);
  }
}

// The title and what holds at the mark above; what the lines are below, and the name of the axis where there is room.
void names(ImDrawList& canvas, const Frame2& f, const ImVec2& low, const Plot& plot) {
  const ImU32 ink = ImGui::GetColorU32(ImGuiCol_Text), faint = ImGui::GetColorU32(ImGuiCol_TextDisabled);
  const float value = plot.mark_text.empty() ? 0.0F : width_of(plot.mark_text) + em(0.6F);
  canvas.PushClipRect(low, {f.high.x - value, f.low.y}, true);
  canvas.AddText(low, ink, plot.title.c_str());
  canvas.PopClipRect();
  canvas.AddText({f.high.x - value + em(0.6F), low.y}, ink, plot.mark_text.c_str());

  float x = f.low.x;
  const float y = f.high.y + row() + em(0.25F);
  for (const PlotLine& line : plot.lines) {
    if (plot.lines.size() < 2) break;
    canvas.AddRectFilled({x, y + em(0.45F)}, {x + em(0.7F), y + em(0.65F)}, line.color);
    canvas.AddText({x + em(0.85F), y}, faint, line.name.c_str());
    x += width_of(line.name) + em(1.4F);
  }
  for (const PlotBound& bound : plot.bounds) {
    const std::string words = bound.name + (bound.y > f.b.y1 ? " \u2191" : bound.y < f.b.y0 ? " \u2193" : "");
    if (x + em(0.85F) + width_of(words) > f.high.x) break;
    canvas.AddLine({x, y + 0.55F * row()}, {x + em(0.28F), y + 0.55F * row()}, bound_color(), em(0.09F));
    canvas.AddLine({x + em(0.42F), y + 0.55F * row()}, {x + em(0.7F), y + 0.55F * row()}, bound_color(), em(0.09F));
    canvas.AddText({x + em(0.85F), y}, faint, words.c_str());
    x += width_of(words) + em(1.4F);
  }
  const float axis = f.high.x - width_of(plot.x_name);
  if (axis >= x) canvas.AddText({axis, y}, faint, plot.x_name.c_str());
}

void hover(ImDrawList& canvas, const Frame2& f, const Plot& plot) {
  const double x = f.x_of(ImGui::GetIO().MousePos.x);
  std::string words;
  for (const PlotLine& line : plot.lines) {
    if (line.x.empty()) continue;
    auto near = std::lower_bound(line.x.begin(), line.x.end(), x);
    if (near == line.x.end() || (near != line.x.begin() && x - *(near - 1) < *near - x)) --near;
    const auto i = static_cast<std::size_t>(near - line.x.begin());
    if (i < plot.notes.size()) {
      words = plot.notes[i];
      break;
    }
    if (words.empty()) words = fmt::format("{}: {}", plot.x_name, short_figure(line.x[i], 5));
    words += fmt::format("\n{}: {}", line.name, short_figure(line.y[i], 6));
    canvas.AddCircleFilled(f.at(line.x[i], line.y[i]), em(0.22F), line.color);
  }
  for (const PlotBound& bound : plot.bounds) words += fmt::format("\n{}", bound.name);
  if (!words.empty()) ImGui::SetTooltip("%s", words.c_str());
}

}  // namespace

std::optional<double> y_at(const PlotLine& line, double x) {
  if (line.x.empty()) return std::nullopt;
  const auto found = std::lower_bound(line.x.begin(), line.x.end(), x);
  if (found == line.x.begin()) return line.y.front();
  if (found == line.x.end()) return line.y.back();
  const auto after = static_cast<std::size_t>(found - line.x.begin());
  const double share = (x - line.x[after - 1]) / (line.x[after] - line.x[after - 1]);
  return std::lerp(line.y[after - 1], line.y[after], share);
}

float left_room(const Plot& plot) {
  const Bounds b = bounds_of(plot);
  float figures = 0.0F;
  for (const LegendTick& tick : round_ticks(b.y0, b.y1)) figures = std::max(figures, width_of(tick.text));
  return std::max(em(2.2F), figures + em(0.4F));
}

std::optional<double> draw_plot(const Plot& plot, const ImVec2& size, float left) {
  ImGui::InvisibleButton(plot.title.c_str(), size);
  const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
  const Frame2 f = frame_in(low, high, left, bounds_of(plot));
  ImDrawList& canvas = *ImGui::GetWindowDrawList();
  names(canvas, f, low, plot);
  if (f.high.x - f.low.x < em(3.0F) || f.high.y - f.low.y < em(1.5F)) return std::nullopt;
  const ImU32 grid = ImGui::GetColorU32(ImGuiCol_Border, 0.6F), ink = ImGui::GetColorU32(ImGuiCol_TextDisabled);
  x_axis(canvas, f, grid, ink);
  y_axis(canvas, f, grid, ink);
  canvas.AddRect(f.low, f.high, ImGui::GetColorU32(ImGuiCol_Border));
  canvas.PushClipRect(f.low, f.high, true);
  bands_of(canvas, f, plot.bands);
  for (const PlotLine& line : plot.lines) line_of(canvas, f, line);
  for (const PlotBound& bound : plot.bounds) {
    if (bound.y < f.b.y0 || bound.y > f.b.y1) continue;
    broken_line(canvas, f.at(f.b.x0, bound.y), f.at(f.b.x1, bound.y));
  }
  band_names(canvas, f, plot.bands);
  canvas.PopClipRect();
  mark(canvas, f, plot);
  for (const PlotLine& line : plot.lines) dots_of(canvas, f, line);
  if (ImGui::IsItemActive()) return f.x_of(ImGui::GetIO().MousePos.x);
  if (ImGui::IsItemHovered()) hover(canvas, f, plot);
  return std::nullopt;
}

}  // namespace laywright
