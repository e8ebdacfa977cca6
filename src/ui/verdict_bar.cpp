#include "ui/verdict_bar.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/spelling.h"
#include "ui/style.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

ImU32 color_for(Grade grade, Theme theme) {
  switch (grade) {
    case Grade::good: return ImGui::GetColorU32(ImGuiCol_CheckMark);
    case Grade::marginal: return ImGui::GetColorU32(warning_color(theme));
    case Grade::do_not_wind: return ImGui::GetColorU32(error_color(theme));
  }
  return 0;
}

// A disc, a triangle, a bar across a disc: known without their colours.
void sign(Grade grade, Theme theme) {
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float side = em(0.95F), top = at.y + 0.5F * (ImGui::GetTextLineHeight() - side), half = 0.5F * side;
  const ImU32 color = color_for(grade, theme);
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

void checks(const Wound& wound, const WindVerdict& verdict, Theme theme) {
  ImGui::BeginTooltip();
  ImGui::Text("Weighed as %s", weighed_as(wound.plan()).c_str());
  if (ImGui::BeginTable("checks", 5, ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit)) {
    table_heads({"", "Figure", "Limit", "Margin", ""}, 1);
    for (const Check& check : verdict.checks) {
      ImGui::TableNextRow();
      ImGui::TableNextColumn();
      ImGui::TextUnformatted(capitalised(name_of(check)).c_str());
      for (const std::string& text : {value_text(check), limit_text(check), margin_text(check)}) {
        ImGui::TableNextColumn();
        right_text(text);
      }
      ImGui::TableNextColumn();
      ImGui::PushStyleColor(ImGuiCol_Text, check.grade == Grade::good ? ImGui::GetColorU32(ImGuiCol_Text)
                                                                      : color_for(check.grade, theme));
      ImGui::TextUnformatted(name_of(check.grade));
      ImGui::PopStyleColor();
    }
    ImGui::EndTable();
  }
  ImGui::TextUnformatted(wrapped(draw_words(wound.build()), em(34.0F)).c_str());
  ImGui::EndTooltip();
}

}  // namespace

void verdict_bar(const Workbench& bench, PanelState& state) {
  const WoundPtr wound = bench.wound_in_hand();
  if (!wound || bench.lesson()) return;
  const Theme theme = bench.stage_in_hand()->view.theme;
  const VerdictPtr verdict = wound->verdict();
  ImGui::SetCursorPos({ImGui::GetCursorPosX() + em(0.2F), ImGui::GetCursorPosY() + em(0.35F)});
  // Room for two lines always, so that the picture below stays where it is while the plan is laid anew.
  const float top = ImGui::GetCursorPosY(), two_lines = 2.0F * ImGui::GetTextLineHeightWithSpacing();
  ImGui::BeginGroup();
  if (verdict) {
    sign(verdict->grade, theme);
    ImGui::TextUnformatted(wrapped(verdict_line(*verdict), ImGui::GetContentRegionAvail().x - em(0.3F)).c_str());
  } else {
    ImGui::PushStyleColor(ImGuiCol_Text, quiet_color());
    ImGui::TextUnformatted("The verdict comes with the full build.");
    ImGui::PopStyleColor();
  }
  ImGui::EndGroup();
  state.places.note_item("verdict");
  if (verdict && ImGui::IsItemHovered()) checks(*wound, *verdict, theme);
  ImGui::SetCursorPosY(std::max(ImGui::GetCursorPosY(), top + two_lines));
}

}  // namespace laywright
