// What somebody says of a spool: of a new one, and more of one that is recorded.
#include <algorithm>

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include "base/quantity_text.h"
#include "ui/reading_cells.h"
#include "ui/records_parts.h"
#include "ui/style.h"

namespace laywright {
namespace {

void decision_row(const std::string& place, SaidOfSpool& said, PanelState& state) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted("Decision");
  ImGui::TableNextColumn();
  const auto choice = [&](const char* words, Decision decision) {
    if (ImGui::RadioButton(words, said.decision == decision)) said.decision = decision;
    state.places.note_item(fmt::format("{} {}", place, words));
  };
  choice("none yet", Decision::none);
  ImGui::SameLine();
  choice("accepted", Decision::accepted);
  ImGui::SameLine();
  choice("rejected", Decision::rejected);
  if (said.decision == Decision::rejected) form_row("Reason", "why", said.reason, place + " reason", state);
}

void readings_table(const std::vector<Checkpoint>& checkpoints, const Counter* counter, const std::string& place,
                    SaidOfSpool& said, PanelState& state) {
  const std::vector<std::string> cells = reading_heads(counter, false);
  std::vector<const char*> heads{"Read"};
  for (const std::string& cell : cells) heads.push_back(cell.c_str());
  said.readings = with_checkpoints(std::move(said.readings), checkpoints);
  constexpr ImGuiTableFlags flags = ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit |
                                    ImGuiTableFlags_BordersInnerV | ImGuiTableFlags_NoHostExtendX;
  if (!ImGui::BeginTable("cells", static_cast<int>(heads.size()), flags)) return;
  for (const char* head : heads) ImGui::TableSetupColumn(head, 0, em(head == heads.front() ? 6.0F : 5.1F));
  table_heads(heads, 99);
  for (std::size_t i = 0; i < said.readings.size(); ++i) {
    TypedRow& row = said.readings[i];
    ImGui::PushID(static_cast<int>(i));
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted(place_words(row).c_str());
    for (std::size_t cell = 0; cell < reading_cells; ++cell) {
      ImGui::TableNextColumn();
      ImGui::PushID(static_cast<int>(cell));
      ImGui::SetNextItemWidth(em(5.0F));
      const std::string hint = planned_in(checkpoint_of(checkpoints, row), cell, false);
      ImGui::InputTextWithHint("##cell", hint.c_str(), &row.cells[cell]);
      state.places.note_item(fmt::format("{} cell {} {}", place, i, cell));
      ImGui::PopID();
    }
    ImGui::PopID();
  }
  ImGui::EndTable();
}

}  // namespace

void take_over_button(const Workbench& bench, SaidOfSpool& said, const std::string& place, PanelState& state) {
  if (bench.active() == nullptr) return;
  const TypedReadings& followed = bench.active()->readings;
  const auto lines =
      std::count_if(followed.begin(), followed.end(), [](const TypedRow& row) { return !row.empty(); });
  if (lines == 0) return;
  ImGui::SameLine(0.0F, em(1.2F));
  if (ImGui::Button(fmt::format("Take over from Follow ({})", counted(lines, "line")).c_str()))
    said.readings = in_units(followed, bench.wound() ? counter_of(bench.wound()->plan()) : nullptr, false);
  state.places.note_item(place + " take over");
  if (ImGui::IsItemHovered())
    ImGui::SetTooltip("What was typed into the tab Follow takes the place of what stands here.");
}

void spool_form(const std::vector<Checkpoint>& checkpoints, const Counter* counter, const std::string& place,
                SaidOfSpool& said, PanelState& state) {
  if (ImGui::BeginTable("said", 2, ImGuiTableFlags_SizingFixedFit,
                        {std::min(ImGui::GetContentRegionAvail().x, em(40.0F)), 0.0F})) {
    ImGui::TableSetupColumn("name", 0, em(5.5F));
    ImGui::TableSetupColumn("said", ImGuiTableColumnFlags_WidthStretch);
    decision_row(place, said, state);
    form_row("By", "who says so, or nothing", said.by, place + " by", state);
    form_row("Note", "anything else worth knowing, or nothing", said.note, place + " note", state);
    ImGui::EndTable();
  }
  readings_table(checkpoints, counter, place, said, state);
}

}  // namespace laywright
