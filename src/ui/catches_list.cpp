#include "ui/catches_list.h"

#include <algorithm>

#include <fmt/format.h>
#include <imgui.h>

#include "base/quantity_text.h"
#include "base/spelling.h"
#include "measure/severity.h"
#include "payoff/payoff_words.h"
#include "session/scrub_commands.h"
#include "ui/style.h"

namespace laywright {
namespace {

// Where it catches, the hardest first; a click flies there.
void catches_table(const PayoffRun& run, const Plan& plan, PanelState& state, Commands& out) {
  if (run.catches.empty()) return;
  ImGui::TextUnformatted(capitalised(count_words(run)).c_str());
  state.places.note_item("catches");
  constexpr std::size_t most_lines = 4;
  const float line = ImGui::GetTextLineHeight() + 2.0F * ImGui::GetStyle().CellPadding.y;
  const auto lines = static_cast<float>(1 + std::min(most_lines, run.catches.size()));
  constexpr ImGuiTableFlags flags = ImGuiTableFlags_RowBg | ImGuiTableFlags_ScrollY | ImGuiTableFlags_BordersOuterH |
                                    ImGuiTableFlags_SizingStretchProp;
  if (!ImGui::BeginTable("catches", 4, flags, {0.0F, lines * line + em(0.3F)})) return;
  ImGui::TableSetupScrollFreeze(0, 1);
  // Figures take the room that they need: "over 1,000" is wider than most.
  ImGui::TableSetupColumn("Catch", ImGuiTableColumnFlags_WidthStretch);
  for (const char* figures : {"Layer", "Turn", "Pull"}) {
    ImGui::TableSetupColumn(figures, ImGuiTableColumnFlags_WidthFixed);
  }
  table_heads({"Catch", "Layer", "Turn", "Pull"}, 1,
              {"What holds it", "The layer in which it lies", "The turn at which it lies",
               "What it needs, in times the pull of winding"},
              false);
  for (std::size_t i = 0; i < run.catches.size(); ++i) {
    const PayoffCatch& caught = run.catches[i];
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    ImGui::PushID(static_cast<int>(i));
    if (ImGui::Selectable(short_words(caught.by), false, ImGuiSelectableFlags_SpanAllColumns)) {
      out.push_back(cmd::fly_to_catch(i));
    }
    state.places.note_item(fmt::format("catch {}", i));
    if (ImGui::IsItemHovered()) {
      ImGui::BeginTooltip();
      ImGui::PushTextWrapPos(em(26.0F));
      ImGui::TextUnformatted(
          fmt::format("{}. {}", capitalised(name_of(caught.severity)), sentence_of(caught, plan)).c_str());
      ImGui::PopTextWrapPos();
      ImGui::EndTooltip();
    }
    ImGui::TableNextColumn();
    right_text(fmt::format("{}", caught.layer));
    ImGui::TableNextColumn();
    right_text(figure(caught.turn, 1));
    ImGui::TableNextColumn();
    right_text(multiple_figure(caught.multiple));
    ImGui::PopID();
  }
  ImGui::EndTable();
}

}  // namespace

void payoff_lines(const Wound& wound, PanelState& state, Commands& out) {
  const TakeupPtr run = wound.takeup();
  if (!run || !run->payoff) return;
  wrapped_text(payoff_line(*run->payoff, wound.build().length_mm));
  state.places.note_item("payoff line");
  if (run->payoff->hardest && ImGui::IsItemHovered()) {
    ImGui::BeginTooltip();
    ImGui::PushTextWrapPos(em(26.0F));
    ImGui::TextUnformatted(
        fmt::format("{} {}", sentence_of(*run->payoff->hardest, wound.plan()), basis_of(*run->payoff)).c_str());
    ImGui::PopTextWrapPos();
    ImGui::EndTooltip();
  }
  catches_table(*run->payoff, wound.plan(), state, out);
}

}  // namespace laywright
