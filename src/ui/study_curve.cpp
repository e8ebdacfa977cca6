// One figure of a study over one key.
#include <algorithm>
#include <cmath>

#include "scene/palette.h"
#include "ui/focus.h"
#include "ui/plot.h"
#include "ui/study_map.h"
#include "ui/style.h"

namespace laywright {
namespace {

// Values of the plot are those that are read, in the unit shown.
double number_of(const StudyPicture& picture, const StudyAxis& axis, double value) {
  return std::stod(axis_text(picture, axis, value, false));
}

PlotDot dot_of(const StudyRow& row) {
  if (!row.verdict) return PlotDot::point;
  switch (row.verdict->grade) {
    case Grade::good: return PlotDot::full;
    case Grade::marginal: return PlotDot::ring;
    case Grade::do_not_wind: return PlotDot::point;
  }
  return PlotDot::point;
}

struct Curve {
  Plot plot;
  std::vector<std::size_t> rows;  // by point
};

Curve curve_of(const StudyPicture& picture) {
  const Study& study = picture.answer.study;
  const StudyAxis& axis = study.spec.axes[0];
  const View& view = picture.bench.active()->stage.view;
  const std::size_t figure = Study::figure(picture.figure.key);
  Curve curve;
  curve.plot.title = figure_heading(picture.figure, view.units);
  curve.plot.x_name = axis_heading(picture, axis);
  PlotLine line;
  line.name = curve.plot.title;
  line.color = ImGui::GetColorU32(color_of(hue_palette[view.theme == Theme::light ? 0 : 5]));
  for (std::size_t i = 0; i < study.rows.size(); ++i) {
    const StudyRow& row = study.rows[i];
    if (row.figures.empty()) continue;
    line.x.push_back(number_of(picture, axis, row.values[0]));
    line.y.push_back(figure_in(picture.figure, row.figures[figure], view.units));
    line.dots.push_back(dot_of(row));
    curve.plot.notes.push_back(build_words(picture, i));
    curve.rows.push_back(i);
  }
  curve.plot.lines.push_back(std::move(line));
  const auto now = place_in(study, picture.bench.active()->document->state().draft);
  if (now && !picture.stale) curve.plot.mark_x = number_of(picture, axis, now->front());
  return curve;
}

std::optional<std::size_t> nearest(const Curve& curve, double x) {
  const std::vector<double>& all = curve.plot.lines.front().x;
  const auto found = std::min_element(all.begin(), all.end(),
                                      [x](double a, double b) { return std::abs(a - x) < std::abs(b - x); });
  if (found == all.end()) return std::nullopt;
  return curve.rows[static_cast<std::size_t>(found - all.begin())];
}

}  // namespace

std::optional<std::size_t> study_curve(const StudyPicture& picture, const ImVec2& room, PanelState& state) {
  const Curve curve = curve_of(picture);
  if (curve.rows.empty()) {
    ImGui::TextWrapped("There is no sound plan in this range: choose another.");
    return std::nullopt;
  }
  StudyState& study = state.study;
  ImGui::PushStyleColor(ImGuiCol_Text, quiet_color());
  wrapped_text("Dot: good; ring: marginal; point: do not wind; upright line: the plan now.");
  ImGui::PopStyleColor();
  const ImVec2 size{room.x, ImGui::GetContentRegionAvail().y};
  const std::optional<double> pointed = draw_plot(curve.plot, size, left_room(curve.plot));
  state.places.note_item("study curve");
  if (pointed) study.pointed = pointed;
  if (ImGui::IsItemDeactivated() && study.pointed) {
    const double x = *study.pointed;
    study.pointed.reset();
    return nearest(curve, x);
  }
  if (!picture.has_keys) return std::nullopt;
  const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
  ImGui::GetWindowDrawList()->AddRect(low, high, ImGui::GetColorU32(ImGuiCol_NavHighlight), 0.0F, 0, em(0.14F));
  study.cursor = std::min(study.cursor, picture.answer.study.rows.size() - 1);
  bool enter = false;
  for (const std::string& keys : state.focus.drawing_keys) {
    if (keys == "Right" && study.cursor + 1 < picture.answer.study.rows.size()) ++study.cursor;
    if (keys == "Left" && study.cursor > 0) --study.cursor;
    enter |= keys == "Enter";
  }
  ImGui::SetNextWindowPos({0.5F * (low.x + high.x), low.y}, ImGuiCond_Always, {0.5F, 1.0F});
  ImGui::SetTooltip("%s", build_words(picture, study.cursor).c_str());
  return enter ? std::optional(study.cursor) : std::nullopt;
}

}  // namespace laywright
