#include "ui/dialogs.h"

#include <algorithm>

#include <fmt/format.h>

#include "advise/improve_words.h"
#include "advise/searchable_setting.h"
#include "answers/improve_report.h"
#include "session/advice.h"
#include "session/advice_commands.h"
#include "session/window_commands.h"
#include "ui/advice_parts.h"
#include "ui/modal.h"
#include "ui/style.h"

namespace laywright {
namespace {

constexpr AdviceKind better_kind = AdviceKind::better;

void turned_row(const Plan& plan, const SearchableSetting& searchable, PanelState& state) {
  std::vector<std::string>& keep = state.better.request.keep;
  const auto kept = std::find(keep.begin(), keep.end(), searchable.path);
  bool turned = kept == keep.end();
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  if (ImGui::Checkbox(searchable.words.c_str(), &turned)) {
    if (turned) keep.erase(kept);
    if (!turned) keep.push_back(searchable.path);
  }
  state.places.note_item(fmt::format("better turn {}", searchable.path));
  // Of the tension, the range is known when the plan has been laid for it.
  const bool open = searchable.late && searchable.low == searchable.high;
  if (searchable.late && ImGui::IsItemHovered()) {
    ImGui::SetTooltip(
        open ? "Turned last, where all else leaves something, or the pull is not good; as far as fiber,\n"
               "spool and clutch bear it."
             : "Turned last, where all else leaves something.");
  }
  const auto cell = [&](double value, bool shown) {
    ImGui::TableNextColumn();
    right_text(shown ? searchable_text(plan, searchable, value) : "-", !turned);
  };
  cell(searchable.now, true);
  cell(searchable.nearest(searchable.low), turned && !open);
  cell(searchable.nearest(searchable.high), turned && !open);
  cell(searchable.step, turned && !searchable.is_switch);
}

void searchables_table(const Plan& plan, const std::vector<SearchableSetting>& searchables, PanelState& state) {
  constexpr ImGuiTableFlags flags = ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingStretchProp;
  if (!ImGui::BeginTable("knobs", 5, flags)) return;
  const std::vector<const char*> names{"What may be turned", "now", "from", "to", "in steps of"};
  for (const char* name : names) ImGui::TableSetupColumn(name);
  table_heads(names, 1);
  for (const SearchableSetting& searchable : searchables) turned_row(plan, searchable, state);
  ImGui::EndTable();
}

void set_up(const Workbench& bench, PanelState& state, Commands& out) {
  wrapped_text(
      "The plan is laid many times with other settings, first coarsely and its first layers alone; the best few "
      "then as a whole, on several draws, and with each setting a step off. Best is what the verdict finds "
      "good, with most room to its limits. A plan that is good already is left as it is.");
  ImGui::Spacing();
  const Result<Plan> plan = check(bench.active()->document->state().draft);
  if (!plan.ok()) {
    wrapped_text(bench.why_not(cmd::search_better()));
    return;
  }
  BetterState& better = state.better;
  // Of all, kept or not: the drift is a setting only when it is wished for.
  const Result<std::vector<SearchableSetting>> searchables =
      searchables_of(plan.value().draft(), {}, better.request.drift);
  if (!searchables.ok()) return wrapped_text(trouble_words(searchables.issues()));
  searchables_table(plan.value(), searchables.value(), state);
  ImGui::Checkbox("The stops may move outward from layer to layer, as steps of the wind", &better.request.drift);
  state.places.note_item("better drift");
  ImGui::Spacing();
  inquiry_line(bench, better_kind, "Searching", "better", state, out);
  if (bench.active()->advice->status(better_kind).busy) return;
  if (command_button(bench, "Search", cmd::search_better(better.request),
                     "May take a minute; the window can be used.", out)) {
    better.sets_up = false;
  }
  if (ImGui::IsWindowAppearing()) ImGui::SetItemDefaultFocus();
  state.places.note_item("better search");
}

void proposals_table(const BetterAnswer& answer, const PanelState& state) {
  const Improvement& found = answer.improvement;
  const int columns = 2 + static_cast<int>(found.best.size());
  constexpr ImGuiTableFlags flags = ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingStretchProp;
  if (!ImGui::BeginTable("proposals", columns, flags)) return;
  std::vector<std::string> names{"", "as it is"};
  for (std::size_t i = 1; i <= found.best.size(); ++i) names.push_back(fmt::format("proposal {}", i));
  std::vector<const char*> heads;
  for (const std::string& name : names) heads.push_back(name.c_str());
  for (std::size_t i = 0; i < heads.size(); ++i) {
    ImGui::TableSetupColumn(heads[i], ImGuiTableColumnFlags_WidthStretch, i == 0 ? 2.0F : 1.0F);
  }
  table_heads(heads, 1);
  for (const ProposalTable& table : proposal_tables(answer.of.plan, found)) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    heading(table.title.substr(0, table.title.find(':')), state);
    if (table.title.find(':') != std::string::npos && ImGui::IsItemHovered()) {
      ImGui::SetTooltip("%s", table.title.c_str());
    }
    for (const ProposalRow& row : table.rows) {
      ImGui::TableNextRow();
      ImGui::TableNextColumn();
      ImGui::TextUnformatted(row.name.c_str());
      for (std::size_t i = 0; i < row.cells.size(); ++i) {
        ImGui::TableNextColumn();
        right_text(row.cells[i], i > 0 && row.cells[i] == row.cells[0]);
      }
    }
  }
  ImGui::EndTable();
}

// True: the plan was set, and is to be seen.
bool found(const Workbench& bench, const BetterAnswer& answer, PanelState& state, Commands& out) {
  stale_line(bench, better_kind, "better", state);
  wrapped_text(answer.improvement.text);
  state.places.note_item("better text");
  bool set = false;
  for (std::size_t i = 0; i < answer.improvement.best.size(); ++i) {
    ImGui::Spacing();
    heading(fmt::format("Proposal {}", i + 1), state);
    wrapped_text(answer.improvement.best[i].text);
    set |= option_buttons(bench, better_kind, i, "better", state, out);
  }
  ImGui::Spacing();
  proposals_table(answer, state);
  return set;
}

}  // namespace

void better_dialog(const Workbench& bench, PanelState& state, Commands& out) {
  if (bench.active() == nullptr) return;
  const Advice& advice = *bench.active()->advice;
  const bool busy = advice.status(better_kind).busy;
  const bool answers = advice.better() && !state.better.sets_up && !busy;
  if (!begin_modal("Better settings", 60.0F, answers ? 52.0F : 28.0F)) return;
  bool leaves = false;
  // Flattened: the arrows go from what stands in it to the buttons below.
  ImGui::BeginChild("better", {0.0F, -ImGui::GetFrameHeight() - em(0.8F)}, false, ImGuiWindowFlags_NavFlattened);
  if (answers) {
    leaves = found(bench, *advice.better(), state, out);
  } else {
    set_up(bench, state, out);
  }
  ImGui::EndChild();
  ImGui::Spacing();
  leaves |= ImGui::Button(busy ? "Close, and go on searching" : "Close") || escape_pressed();
  state.places.note_item("better close");
  if (advice.better() && !busy) {
    ImGui::SameLine();
    if (ImGui::Button(answers ? "Search anew..." : "Back to what was found")) state.better.sets_up = answers;
    state.places.note_item("better anew");
  }
  if (leaves) {
    out.push_back(cmd::answered());
    ImGui::CloseCurrentPopup();
  }
  ImGui::EndPopup();
}

}  // namespace laywright
