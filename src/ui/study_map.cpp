#include "ui/study_map.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "paper/study_map.h"
#include "ui/focus.h"
#include "ui/style.h"

namespace laywright {
namespace {

struct Span {
  double low = std::numeric_limits<double>::infinity(), high = -std::numeric_limits<double>::infinity();

  [[nodiscard]] bool empty() const { return !(low <= high); }
  [[nodiscard]] double share(double value) const { return high > low ? (value - low) / (high - low) : 0.5; }
};

Span span_of(const Study& study, std::size_t figure) {
  Span span;
  for (const StudyRow& row : study.rows) {
    if (row.figures.empty() || !std::isfinite(row.figures[figure])) continue;
    span.low = std::min(span.low, row.figures[figure]);
    span.high = std::max(span.high, row.figures[figure]);
  }
  return span;
}

float line_height() { return ImGui::GetTextLineHeight(); }
ImU32 ink() { return ImGui::GetColorU32(ImGuiCol_Text); }
ImU32 faint() { return ImGui::GetColorU32(ImGuiCol_TextDisabled); }

ImU32 shade(double share) {
  const Color c = map_color(share);
  return ImGui::GetColorU32(
      ImVec4{static_cast<float>(c.red), static_cast<float>(c.green), static_cast<float>(c.blue), 1.0F});
}

// The cells on the screen.
struct Cells {
  const Study& study;
  ImVec2 low, high;

  [[nodiscard]] int across() const { return study.spec.axes[0].count; }
  [[nodiscard]] int upward() const { return study.spec.axes[1].count; }
  [[nodiscard]] ImVec2 size() const {
    return {(high.x - low.x) / static_cast<float>(across()), (high.y - low.y) / static_cast<float>(upward())};
  }
  [[nodiscard]] ImVec2 corner(int i, int k) const {
    return {low.x + static_cast<float>(i) * size().x, high.y - static_cast<float>(k) * size().y};
  }
  [[nodiscard]] std::size_t row(int i, int k) const {
    return static_cast<std::size_t>(i) * static_cast<std::size_t>(upward()) + static_cast<std::size_t>(k);
  }
  [[nodiscard]] std::optional<std::size_t> at(const ImVec2& mouse) const {
    const int i = static_cast<int>(std::floor((mouse.x - low.x) / size().x));
    const int k = static_cast<int>(std::floor((high.y - mouse.y) / size().y));
    if (i < 0 || k < 0 || i >= across() || k >= upward()) return std::nullopt;
    return row(i, k);
  }
  // Where a pair of values lies: a value of the grid in the middle of its cell.
  [[nodiscard]] ImVec2 place(const std::vector<double>& values) const {
    const auto along = [](const StudyAxis& axis, double value) {
      return static_cast<float>(((value - axis.from) / (axis.to - axis.from) * (axis.count - 1) + 0.5) / axis.count);
    };
    return {low.x + along(study.spec.axes[0], values[0]) * (high.x - low.x),
            high.y - along(study.spec.axes[1], values[1]) * (high.y - low.y)};
  }
};

void hatch(ImDrawList& canvas, const ImVec2& low, const ImVec2& high) {
  canvas.PushClipRect(low, high, true);
  const float height = high.y - low.y, gap = em(0.45F);
  for (float x = low.x - height; x < high.x; x += gap) {
    canvas.AddLine({x, high.y}, {x + height, low.y}, faint(), em(0.07F));
  }
  canvas.PopClipRect();
}

// Dark on a light ring, to be seen on every colour; a marginal one is hollow. Nothing where it is not to be wound.
void verdict_dot(ImDrawList& canvas, const ImVec2& at, float radius, Grade grade) {
  if (grade == Grade::do_not_wind) return;
  const ImU32 light = IM_COL32(255, 255, 255, 255);
  canvas.AddCircleFilled(at, 1.5F * radius, light);
  canvas.AddCircleFilled(at, radius, IM_COL32(20, 22, 26, 255));
  if (grade == Grade::marginal) canvas.AddCircleFilled(at, 0.55F * radius, light);
}

// Of the plan as it is: a diamond, light within dark.
void plan_sign(ImDrawList& canvas, const ImVec2& at, float radius) {
  const auto diamond = [&](float r, ImU32 color, float width) {
    const std::array<ImVec2, 4> points{{{at.x, at.y - r}, {at.x + r, at.y}, {at.x, at.y + r}, {at.x - r, at.y}}};
    canvas.AddPolyline(points.data(), 4, color, ImDrawFlags_Closed, width);
  };
  diamond(radius, IM_COL32(20, 22, 26, 255), em(0.34F));
  diamond(radius, IM_COL32(240, 150, 40, 255), em(0.16F));
}

void draw_cells(ImDrawList& canvas, const StudyPicture& picture, const Cells& cells, const Span& span) {
  const std::size_t figure = Study::figure(picture.figure.key);
  const ImVec2 size = cells.size();
  const float radius = std::min({em(0.22F), 0.2F * size.x, 0.2F * size.y});
  for (int i = 0; i < cells.across(); ++i) {
    for (int k = 0; k < cells.upward(); ++k) {
      const StudyRow& row = cells.study.rows[cells.row(i, k)];
      const ImVec2 foot = cells.corner(i, k), high = cells.corner(i + 1, k + 1);
      const ImVec2 low{foot.x, high.y}, corner{high.x, foot.y};
      if (row.figures.empty()) {
        hatch(canvas, low, corner);
        continue;
      }
      canvas.AddRectFilled(low, corner, shade(span.share(row.figures[figure])));
      const ImVec2 middle{0.5F * (low.x + corner.x), 0.5F * (low.y + corner.y)};
      if (row.verdict) verdict_dot(canvas, middle, radius, row.verdict->grade);
    }
  }
  canvas.AddRect(cells.low, cells.high, ImGui::GetColorU32(ImGuiCol_Border));
}

// Every which value has its figure, so that they do not run into each other.
int stride_of(int count, float each, float needed) {
  return std::clamp(static_cast<int>(std::ceil(needed / std::max(1.0F, each))), 1, std::max(1, count - 1));
}

void draw_axes(ImDrawList& canvas, const StudyPicture& picture, const Cells& cells) {
  const StudyAxis &x = cells.study.spec.axes[0], &y = cells.study.spec.axes[1];
  float widest = 0.0F;
  for (int i = 0; i < x.count; ++i) widest = std::max(widest, width_of(axis_text(picture, x, x.at(i), false)));
  const ImVec2 size = cells.size();
  const int across = stride_of(x.count, size.x, widest + em(0.6F)), up = stride_of(y.count, size.y, line_height());
  for (int i = 0; i < x.count; i += across) {
    const std::string text = axis_text(picture, x, x.at(i), false);
    const float middle = cells.corner(i, 0).x + 0.5F * size.x - 0.5F * width_of(text);
    canvas.AddText({middle, cells.high.y + em(0.15F)}, faint(), text.c_str());
  }
  for (int k = 0; k < y.count; k += up) {
    const std::string text = axis_text(picture, y, y.at(k), false);
    const float middle = cells.corner(0, k).y - 0.5F * size.y - 0.5F * line_height();
    canvas.AddText({cells.low.x - width_of(text) - em(0.35F), middle}, faint(), text.c_str());
  }
}

void draw_legend(ImDrawList& canvas, const StudyPicture& picture, const ImVec2& low, const ImVec2& high,
                 const Span& span) {
  constexpr int steps = 8;  // between two of them the colours are mixed
  const float height = (high.y - low.y) / steps;
  for (int i = 0; i < steps; ++i) {
    const ImU32 upper = shade(1.0 - static_cast<double>(i) / steps), lower = shade(1.0 - (i + 1.0) / steps);
    const float top = low.y + static_cast<float>(i) * height;
    canvas.AddRectFilledMultiColor({low.x, top}, {high.x, top + height}, upper, upper, lower, lower);
  }
  canvas.AddRect(low, high, ImGui::GetColorU32(ImGuiCol_Border));
  const Units units = picture.bench.active()->stage.view.units;
  const auto write = [&](double share) {
    // The ends stand within the bar's height, clear of what is above and below.
    const auto s = static_cast<float>(share);
    const float y = high.y - s * (high.y - low.y) - (1.0F - s) * line_height();
    const std::string text = figure_text(picture.figure, std::lerp(span.low, span.high, share), units);
    canvas.AddText({high.x + em(0.3F), y}, faint(), text.c_str());
  };
  write(0.0);
  if (span.high > span.low) write(1.0);
  if (span.high > span.low && high.y - low.y > 5.0F * line_height()) write(0.5);
}

// What the signs mean; those that have room.
void draw_key(ImDrawList& canvas, const ImVec2& at, float right) {
  float x = at.x;
  const float middle = at.y + 0.5F * line_height();
  const auto add = [&](const char* words, const auto& sign) {
    const float width = em(1.4F) + width_of(words);
    if (x + width > right) return;
    sign(ImVec2{x + em(0.6F), middle});
    canvas.AddText({x + em(1.4F), at.y}, faint(), words);
    x += width + em(1.0F);
  };
  add("good", [&](const ImVec2& p) { verdict_dot(canvas, p, em(0.2F), Grade::good); });
  add("marginal", [&](const ImVec2& p) { verdict_dot(canvas, p, em(0.25F), Grade::marginal); });
  add("the plan now", [&](const ImVec2& p) { plan_sign(canvas, p, em(0.32F)); });
  add("no sound plan", [&](const ImVec2& p) {
    const float half = em(0.35F);
    hatch(canvas, {p.x - half, p.y - half}, {p.x + half, p.y + half});
    canvas.AddRect({p.x - half, p.y - half}, {p.x + half, p.y + half}, faint());
  });
}

void outline(ImDrawList& canvas, const Cells& cells, std::size_t row) {
  const auto upward = static_cast<std::size_t>(cells.upward());
  const int i = static_cast<int>(row / upward), k = static_cast<int>(row % upward);
  const ImVec2 foot = cells.corner(i, k), high = cells.corner(i + 1, k + 1);
  canvas.AddRect({foot.x, high.y}, {high.x, foot.y}, IM_COL32(20, 22, 26, 255), 0.0F, 0, em(0.3F));
  canvas.AddRect({foot.x, high.y}, {high.x, foot.y}, IM_COL32(255, 255, 255, 255), 0.0F, 0, em(0.13F));
}

// Moves the cursor. True: Enter.
bool take_map_keys(const Cells& cells, PanelState& state) {
  const int upward = cells.upward();
  std::size_t& cursor = state.study.cursor;
  cursor = std::min(cursor, cells.study.rows.size() - 1);
  int i = static_cast<int>(cursor) / upward, k = static_cast<int>(cursor) % upward;
  bool enter = false;
  for (const std::string& keys : state.focus.drawing_keys) {
    i += keys == "Right" ? 1 : keys == "Left" ? -1 : 0;
    k += keys == "Up" ? 1 : keys == "Down" ? -1 : 0;
    enter |= keys == "Enter";
  }
  cursor = cells.row(std::clamp(i, 0, cells.across() - 1), std::clamp(k, 0, upward - 1));
  return enter;
}

void tell(const StudyPicture& picture, std::size_t row, const std::optional<ImVec2>& at) {
  if (at) ImGui::SetNextWindowPos(*at, ImGuiCond_Always, {0.0F, 1.0F});
  ImGui::BeginTooltip();
  ImGui::TextUnformatted(build_words(picture, row).c_str());
  ImGui::EndTooltip();
}

}  // namespace

std::optional<std::size_t> study_map(const StudyPicture& picture, const ImVec2& room, PanelState& state) {
  const Study& study = picture.answer.study;
  const StudyAxis &x = study.spec.axes[0], &y = study.spec.axes[1];
  const Units units = picture.bench.active()->stage.view.units;
  const Span span = span_of(study, Study::figure(picture.figure.key));
  float left = em(1.0F), right = em(1.6F);
  for (int k = 0; k < y.count; ++k)
    left = std::max(left, width_of(axis_text(picture, y, y.at(k), false)) + em(0.5F));
  for (const double v : {span.low, span.high}) {
    if (!span.empty()) right = std::max(right, em(1.6F) + width_of(figure_text(picture.figure, v, units)));
  }
  ImGui::InvisibleButton("study map", {std::max(1.0F, room.x), std::max(1.0F, room.y)});
  const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
  ImDrawList& canvas = *ImGui::GetWindowDrawList();
  const float above = line_height() + em(0.3F), below = 3.0F * line_height() + em(0.4F);
  const Cells cells{study, {low.x + left, low.y + above}, {high.x - right - em(1.0F), high.y - below}};
  if (cells.size().x < 4.0F || cells.size().y < 3.0F) {
    canvas.AddText(low, faint(), "There is no room for the map: make the drawer higher (F4).");
    return std::nullopt;
  }
  state.places.note("study map", {cells.low.x, cells.low.y, cells.high.x - cells.low.x, cells.high.y - cells.low.y});
  canvas.PushClipRect(low, high, true);
  canvas.AddText(low, ink(), axis_heading(picture, y).c_str());
  const std::string figure = figure_heading(picture.figure, units);
  const float title = high.x - width_of(figure);
  if (title > low.x + width_of(axis_heading(picture, y)) + em(1.0F))
    canvas.AddText({title, low.y}, ink(), figure.c_str());
  draw_cells(canvas, picture, cells, span);
  draw_axes(canvas, picture, cells);
  const std::string across = axis_heading(picture, x);
  const float axis_y = cells.high.y + line_height() + em(0.15F);
  canvas.AddText({std::max(low.x, 0.5F * (cells.low.x + cells.high.x - width_of(across))), axis_y}, ink(),
                 across.c_str());
  draw_key(canvas, {cells.low.x, axis_y + line_height() + em(0.15F)}, high.x);
  if (!span.empty()) {
    draw_legend(canvas, picture, {cells.high.x + em(1.0F), cells.low.y}, {cells.high.x + em(1.7F), cells.high.y},
                span);
  }
  const auto now = place_in(study, picture.bench.active()->document->state().draft);
  canvas.PopClipRect();
  if (now && !picture.stale) {
    canvas.PushClipRect(cells.low, cells.high, true);
    plan_sign(canvas, cells.place(*now), em(0.45F));
    canvas.PopClipRect();
  }
  const bool hovered = ImGui::IsItemHovered();
  // Keys and mouse do not tell of two builds at once: the one that moved last does.
  const ImVec2 moved = ImGui::GetIO().MouseDelta;
  if (moved.x != 0.0F || moved.y != 0.0F) state.study.by_keys = false;
  if (picture.has_keys) {
    if (!state.focus.drawing_keys.empty()) state.study.by_keys = true;
    const bool enter = take_map_keys(cells, state);
    outline(canvas, cells, state.study.cursor);
    const auto cursor = static_cast<int>(state.study.cursor);
    const bool tells = !hovered || state.study.by_keys;
    if (tells) tell(picture, state.study.cursor, cells.corner(cursor / y.count + 1, cursor % y.count + 1));
    if (enter) return state.study.cursor;
    if (tells) return std::nullopt;
  }
  const std::optional<std::size_t> pointed = hovered ? cells.at(ImGui::GetIO().MousePos) : std::nullopt;
  if (!pointed) return std::nullopt;
  outline(canvas, cells, *pointed);
  tell(picture, *pointed, std::nullopt);
  return ImGui::IsMouseReleased(ImGuiMouseButton_Left) && ImGui::IsItemDeactivated() ? pointed : std::nullopt;
}

}  // namespace laywright
