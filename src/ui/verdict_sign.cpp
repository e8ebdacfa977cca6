#include "ui/verdict_sign.h"

#include "ui/style.h"

namespace laywright {

ImU32 verdict_color(Grade grade, Theme theme) {
  switch (grade) {
    case Grade::good: return ImGui::GetColorU32(ImGuiCol_CheckMark);
    case Grade::marginal: return ImGui::GetColorU32(warning_color(theme));
    case Grade::do_not_wind: return ImGui::GetColorU32(error_color(theme));
  }
  return 0;
}

void verdict_sign(Grade grade, Theme theme) {
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float side = em(0.95F), top = at.y + 0.5F * (ImGui::GetTextLineHeight() - side), half = 0.5F * side;
  const ImU32 color = verdict_color(grade, theme);
  ImDrawList& canvas = *ImGui::GetWindowDrawList();
  const ImVec2 centre{at.x + half, top + half};
  if (grade == Grade::marginal) {
    canvas.AddTriangleFilled({at.x, top + side}, {centre.x, top}, {at.x + side, top + side}, color);
  } else {
    canvas.AddCircleFilled(centre, half, color);
  }
  if (grade == Grade::do_not_wind) {
    canvas.AddRectFilled({centre.x - 0.6F * half, centre.y - 0.18F * half},
                         {centre.x + 0.6F * half, centre.y + 0.18F * half}, ImGui::GetColorU32(ImGuiCol_WindowBg));
  }
  ImGui::Dummy({side, side});
  ImGui::SameLine(0.0F, em(0.45F));
}

}  // namespace laywright
