#include "ui/panels.h"

#include <algorithm>
#include <cstddef>
#include <optional>

#include <fmt/format.h>

#include "advise/robust.h"
#include "base/spelling.h"
#include "figures/figures.h"
#include "session/advice_commands.h"
#include "ui/advice_parts.h"
#include "ui/style.h"
#include "ui/verdict_sign.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

void draws(const WindVerdict& verdict) {
  if (verdict.draws.empty() ||
      !ImGui::BeginTable("draws", 4, ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit))
    return;
  table_heads({"Seed", "Fiber, mm", "Verdict", "What decides"}, 4);
  for (const DrawSeen& draw : verdict.draws) {
    ImGui::TableNextRow();
    for (const std::string& text : {std::to_string(draw.seed), setting(draw.fiber_diameter_mm),
                                    std::string(name_of(draw.grade)), capitalised(draw.decides)}) {
      ImGui::TableNextColumn();
      ImGui::TextUnformatted(text.c_str());
    }
  }
  ImGui::EndTable();
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
                                                                      : verdict_color(check.grade, theme));
      ImGui::TextUnformatted(name_of(check.grade));
      ImGui::PopStyleColor();
    }
    ImGui::EndTable();
  }
  ImGui::TextUnformatted(wrapped(draw_words(wound.build(), verdict), em(34.0F)).c_str());
  draws(verdict);
  ImGui::EndTooltip();
}

constexpr float draws_padding = 0.4F;  // in letters

std::string draws_label() { return fmt::format("Over {} draws", usual_draws); }

float draws_width() { return ImGui::CalcTextSize(draws_label().c_str()).x + em(2.0F * draws_padding); }

// Behind the last of the words, so that these keep their lines; in the second line where there is one only. Where there is no
// room for it, there is the menu.
void draws_button(const Workbench& bench, const ImVec2& at, PanelState& state, Commands& out) {
  const ImVec2 back = ImGui::GetCursorPos();
  ImGui::SetCursorScreenPos(at);
  const std::string tip = fmt::format(
      "Lays {} other winds of this plan in the background, by other seeds and with fiber within its tolerance: the "
      "verdict is then the worst of {}. Escape stops it.",
      usual_draws - 1, usual_draws);
  ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {em(draws_padding), 0.0F});
  command_button(bench, draws_label().c_str(), cmd::judge_draws(), tip, out);
  ImGui::PopStyleVar();
  state.places.note_item("verdict draws");
  ImGui::SetCursorPos(back);
}

}  // namespace

void verdict_bar(const Workbench& bench, PanelState& state, Commands& out) {
  const WoundPtr wound = bench.wound_in_hand();
  if (!wound || bench.lesson()) return;
  const Theme theme = bench.stage_in_hand()->view.theme;
  const VerdictPtr verdict = bench.verdict_in_hand();
  ImGui::SetCursorPos({ImGui::GetCursorPosX() + em(0.2F), ImGui::GetCursorPosY() + em(0.35F)});
  // Room for two lines always, so that the picture below stays where it is while the plan is laid anew.
  const float top = ImGui::GetCursorPosY(), two_lines = 2.0F * ImGui::GetTextLineHeightWithSpacing();
  std::optional<ImVec2> button;
  ImGui::BeginGroup();
  if (verdict) {
    verdict_sign(verdict->grade, theme);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x - em(0.3F);
    const std::string words = wrapped(verdict_line(*verdict), width);
    ImGui::TextUnformatted(words.c_str());
    const auto breaks = std::count(words.begin(), words.end(), '\n');
    const float last = breaks == 0 ? 0.0F : ImGui::CalcTextSize(words.c_str() + words.rfind('\n') + 1).x;
    const bool asks = verdict->draws.empty() && !bench.other_in_hand();
    if (asks && last + em(0.6F) + draws_width() <= width) {
      const auto line = static_cast<float>(std::max<std::ptrdiff_t>(1, breaks));
      button = ImVec2{at.x + width - draws_width(), at.y + line * ImGui::GetTextLineHeight()};
    }
  } else {
    ImGui::PushStyleColor(ImGuiCol_Text, quiet_color());
    ImGui::TextUnformatted("The verdict comes with the full build.");
    ImGui::PopStyleColor();
  }
  ImGui::EndGroup();
  state.places.note_item("verdict");
  const bool on_button = button && ImGui::IsMouseHoveringRect(
                                       *button, {button->x + draws_width(), button->y + ImGui::GetTextLineHeight()});
  if (verdict && ImGui::IsItemHovered() && !on_button) checks(*wound, *verdict, theme);
  if (button) draws_button(bench, *button, state, out);
  ImGui::SetCursorPosY(std::max(ImGui::GetCursorPosY(), top + two_lines));
}

}  // namespace laywright
