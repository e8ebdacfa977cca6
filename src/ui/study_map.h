// The picture of a study: a map over two keys, a curve over one.
#pragma once

#include <optional>

#include "session/advice.h"
#include "ui/panel_state.h"

namespace laywright {

// Everything that is drawn from.
struct StudyPicture {
  const Workbench& bench;
  const StudyAnswer& answer;
  const OutcomeFigure& figure;
  bool stale = false;
  bool has_keys = false;
};

// In so much room. Gives the build that was clicked, or that Enter chose.
[[nodiscard]] std::optional<std::size_t> study_map(const StudyPicture& picture, const ImVec2& room,
                                                   PanelState& state);
[[nodiscard]] std::optional<std::size_t> study_curve(const StudyPicture& picture, const ImVec2& room,
                                                     PanelState& state);

// "Outer diameter, greatest, mm".
[[nodiscard]] std::string figure_heading(const OutcomeFigure& figure, Units units);
[[nodiscard]] std::string figure_text(const OutcomeFigure& figure, double value, Units units);
[[nodiscard]] double figure_in(const OutcomeFigure& figure, double value, Units units);
// A value of a key, in the unit that it is shown in.
[[nodiscard]] std::string axis_text(const StudyPicture& picture, const StudyAxis& axis, double value,
                                    bool with_unit);
// "Traverse: pitch, mm"
[[nodiscard]] std::string axis_heading(const StudyPicture& picture, const StudyAxis& axis);
// Settings, figures, and the verdict.
[[nodiscard]] std::string build_words(const StudyPicture& picture, std::size_t row);

}  // namespace laywright
