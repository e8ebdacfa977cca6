// The page of a recorded spool: as planned, as measured, what people said, and more that is to be said.
#include <fmt/format.h>

#include "session/records_commands.h"
#include "ui/advice_parts.h"
#include "ui/records_parts.h"
#include "ui/style.h"

namespace laywright {
namespace {

constexpr const char* amend_place = "amend";

void named_lines(const std::vector<RecordLine>& lines) {
  if (!ImGui::BeginTable("head", 2, ImGuiTableFlags_SizingFixedFit)) return;
  ImGui::TableSetupColumn("name", 0, em(5.5F));
  ImGui::TableSetupColumn("value", ImGuiTableColumnFlags_WidthStretch);
  for (const RecordLine& line : lines) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    ImGui::TextDisabled("%s", line.name.c_str());
    ImGui::TableNextColumn();
    wrapped_text(line.value);
  }
  ImGui::EndTable();
}

void readings(const RecordPageWords& words, PanelState& state) {
  heading("Measured", state);
  if (words.readings.empty()) return coloured(quiet_color(), "Nothing was measured on it yet: add readings below.");
  constexpr ImGuiTableFlags flags = ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit |
                                    ImGuiTableFlags_BordersInnerV | ImGuiTableFlags_NoHostExtendX;
  if (!ImGui::BeginTable("readings", 4, flags)) return;
  const std::vector<const char*> heads{"Reading", "measured", "planned", "difference"};
  // Said beforehand: nothing draws a second frame, in which columns would fit what stands in them.
  for (const char* head : heads) ImGui::TableSetupColumn(head, 0, em(head == heads.front() ? 15.5F : 7.0F));
  table_heads(heads, 1, {"", "", "-: not the end of a layer of the plan; a fit compares these, too", ""});
  for (const ReadingLine& line : words.readings) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    ImGui::TextUnformatted(line.what.c_str());
    for (const std::string* cell : {&line.measured, &line.planned, &line.difference}) {
      ImGui::TableNextColumn();
      right_text(*cell);
    }
  }
  ImGui::EndTable();
  state.places.note_item("records readings");
}

void history(const RecordPageWords& words, PanelState& state) {
  heading("History", state);
  for (const HistoryEntry& entry : words.history) {
    ImGui::TextDisabled("%s", entry.when.c_str());
    ImGui::SameLine();
    wrapped_text(entry.what);
    ImGui::Indent(em(1.0F));
    for (const std::string& said : entry.said) wrapped_text(said);
    for (const std::string& line : entry.lines) coloured(quiet_color(), line);
    ImGui::Unindent(em(1.0F));
  }
}

void settle_amended(const Workbench& bench, RecordsState& own) {
  if (!own.asked_to_amend || bench.records().keeping()) return;
  own.asked_to_amend = false;
  if (bench.records().kept() && bench.records().kept()->trouble.empty()) own.more = {};
}

void amend_part(const Workbench& bench, const RecordPageWords& words, PanelState& state, Commands& out) {
  RecordsState& own = state.records;
  heading("More about it", state);
  coloured(quiet_color(),
           "What was said before stays in the history. Of two readings at one place the later one holds.");
  if (!words.of->plan) return;
  spool_form(words.checkpoints, counter_of(*words.of->plan), amend_place, own.more, state);
  ImGui::Spacing();
  const Command add = cmd::amend_record(own.more);
  if (command_button(bench, "Add to the record", add, "An entry of its own, with the moment and who says so.", out))
    own.asked_to_amend = true;
  state.places.note_item("amend now");
  take_over_button(bench, own.more, amend_place, state);
}

}  // namespace

void record_page(const Workbench& bench, PanelState& state, Commands& out) {
  RecordsState& own = state.records;
  settle_amended(bench, own);
  const auto& seen = bench.records().seen();
  const long long number = bench.records().looked_at().number;
  if (!seen || !seen->page || seen->page->number != number) {
    ImGui::Spacing();
    if (!seen || seen->trouble.empty()) coloured(quiet_color(), "Reading...");
    return;
  }
  if (own.page.of != seen) own.page = page_words(seen);
  if (own.more_of != number) {
    own.more_of = number;
    own.more = {};
  }
  const RecordPageWords& words = own.page;
  ImGui::BeginChild("page", {0.0F, 0.0F}, false, ImGuiWindowFlags_NavFlattened);
  ImGui::Spacing();
  heading(words.heading, state);
  state.places.note_item("records heading");
  if (!words.reason.empty()) wrapped_text(words.reason);
  const float room = ImGui::GetContentRegionAvail().x;
  const bool both = room >= em(72.0F);
  if (both) ImGui::BeginChild("left", {0.555F * room, 0.0F}, false, ImGuiWindowFlags_NavFlattened);
  named_lines(words.head);
  ImGui::Spacing();
  readings(words, state);
  if (both) {
    ImGui::Spacing();
    amend_part(bench, words, state, out);
    ImGui::EndChild();
    ImGui::SameLine(0.0F, em(1.2F));
    ImGui::BeginChild("right", {0.0F, 0.0F}, false, ImGuiWindowFlags_NavFlattened);
  }
  ImGui::Spacing();
  record_fit_part(bench, state, out);
  ImGui::Spacing();
  history(words, state);
  if (both) {
    ImGui::EndChild();
  } else {
    ImGui::Spacing();
    amend_part(bench, words, state, out);
  }
  ImGui::EndChild();
}

}  // namespace laywright
