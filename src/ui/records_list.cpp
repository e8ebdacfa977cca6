// The records, newest first, and what they are filtered by.
#include <array>

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include "base/quantity_text.h"
#include "base/readable.h"
#include "records/record_words.h"
#include "session/records_commands.h"
#include "ui/advice_parts.h"
#include "ui/records_parts.h"
#include "ui/style.h"

namespace laywright {
namespace {

struct FilterField {
  const char* name;
  const char* tip;
  std::string RecordFilter::*what;
  float width;  // letters
};
constexpr std::array filter_fields{
    FilterField{"spool", "The spool's whole number", &RecordFilter::spool, 7.0F},
    FilterField{"order", "The order's whole number", &RecordFilter::order, 7.0F},
    FilterField{"machine", "The machine's whole name", &RecordFilter::machine, 8.0F},
    FilterField{"plan", "Part of the plan's title or file name", &RecordFilter::plan, 9.0F},
    FilterField{"from", "Wound on this day or later, like 2026-11-29", &RecordFilter::from, 6.5F},
    FilterField{"to", "Wound on this day or before", &RecordFilter::to, 6.5F},
};
constexpr std::array states{"", "accepted", "rejected", "undecided"};

const char* words_of_state(const std::string& state) { return state.empty() ? "any state" : state.c_str(); }

// True when it has changed.
bool state_choice(RecordFilter& filter, PanelState& state) {
  bool changed = false;
  ImGui::SetNextItemWidth(em(7.5F));
  const bool open = ImGui::BeginCombo("##state", words_of_state(filter.state));
  state.places.note_item("records filter state");
  if (!open) return false;
  for (const char* each : states) {
    if (ImGui::Selectable(words_of_state(each), filter.state == each)) {
      changed = filter.state != each;
      filter.state = each;
    }
    state.places.note_item(fmt::format("records state {}", words_of_state(each)));
  }
  ImGui::EndCombo();
  return changed;
}

bool is_day_or_nothing(const std::string& text) { return text.empty() || is_date(text); }

void filter_row(const Workbench& bench, PanelState& state, Commands& out) {
  RecordsState& own = state.records;
  const RecordFilter& now = bench.records().looked_at().filter;
  if (!own.filter) own.filter = now;
  RecordFilter& filter = *own.filter;
  bool taken = false;
  for (const FilterField& field : filter_fields) {
    if (&field != &filter_fields.front()) ImGui::SameLine();
    ImGui::SetNextItemWidth(em(field.width));
    ImGui::PushID(field.name);
    taken |= ImGui::InputTextWithHint("##filter", field.name, &(filter.*field.what),
                                      ImGuiInputTextFlags_EnterReturnsTrue);
    taken |= ImGui::IsItemDeactivatedAfterEdit();
    ImGui::PopID();
    state.places.note_item(fmt::format("records filter {}", field.name));
    if (ImGui::IsItemHovered() && !ImGui::IsItemActive()) ImGui::SetTooltip("%s", field.tip);
  }
  ImGui::SameLine();
  taken |= state_choice(filter, state);
  ImGui::SameLine();
  ImGui::BeginDisabled(filter == RecordFilter{});
  if (ImGui::Button("Clear")) {
    filter = {};
    taken = true;
  }
  ImGui::EndDisabled();
  state.places.note_item("records filter clear");
  const bool days = is_day_or_nothing(filter.from) && is_day_or_nothing(filter.to);
  if (!days) coloured(error_color(theme_of(bench)), "A day is written like 2026-11-29.");
  if (taken && days && !(filter == now)) out.push_back(cmd::filter_records(filter));
}

void row(const SpoolRecord& record, bool open, PanelState& state, Commands& out) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  const std::string number = fmt::format("{}", record.number);
  if (ImGui::Selectable(number.c_str(), open, ImGuiSelectableFlags_SpanAllColumns)) {
    out.push_back(cmd::open_record(record.number));
    state.records.wanted_tab = "page";
  }
  state.places.note_item(fmt::format("records row {}", record.number));
  const auto cell = [](const std::string& text) {
    ImGui::TableNextColumn();
    text.empty() ? ImGui::TextDisabled("-") : ImGui::TextUnformatted(visible(text).c_str());
  };
  cell(record.date);
  cell(record.spool);
  cell(record.machine);
  cell(record.order);
  cell(state_of(record));
  ImGui::TableNextColumn();
  right_text(difference_text(record));
  cell(plan_words(record));
}

void table(const RecordsSeen& seen, PanelState& state, Commands& out) {
  constexpr ImGuiTableFlags flags = ImGuiTableFlags_RowBg | ImGuiTableFlags_ScrollY | ImGuiTableFlags_Resizable |
                                    ImGuiTableFlags_SizingFixedFit | ImGuiTableFlags_BordersInnerV;
  const float below = ImGui::GetTextLineHeightWithSpacing();
  if (!ImGui::BeginTable("records", 8, flags, {0.0F, ImGui::GetContentRegionAvail().y - below})) return;
  const std::vector<const char*> heads{"Record", "Date", "Spool", "Machine", "Order", "State", "Off", "Plan"};
  constexpr std::array widths{4.5F, 6.2F, 7.0F, 7.0F, 7.0F, 6.0F, 6.0F};
  for (std::size_t i = 0; i < widths.size(); ++i) ImGui::TableSetupColumn(heads[i], 0, em(widths[i]));
  ImGui::TableSetupColumn(heads.back(), ImGuiTableColumnFlags_WidthStretch);
  ImGui::TableSetupScrollFreeze(0, 1);
  table_heads(heads, 99, {"Click a row: its page opens", "", "", "", "", "", difference_is, ""});
  ImGuiListClipper clipper;
  clipper.Begin(static_cast<int>(seen.records.size()));
  while (clipper.Step()) {
    for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i) {
      const SpoolRecord& record = seen.records[static_cast<std::size_t>(i)];
      row(record, record.number == seen.of.number, state, out);
    }
  }
  ImGui::EndTable();
}

}  // namespace

void records_list(const Workbench& bench, PanelState& state, Commands& out) {
  ImGui::Spacing();
  filter_row(bench, state, out);
  ImGui::Spacing();
  const auto& seen = bench.records().seen();
  if (!seen) {
    coloured(quiet_color(), "Reading...");
    return;
  }
  if (seen->records.empty()) {
    if (!seen->trouble.empty()) return;
    coloured(quiet_color(),
             seen->none_yet || seen->of.filter == RecordFilter{}
                 ? "Nothing was recorded here yet. The tab This spool keeps the plan in hand with what "
                   "was measured on its spool."
                 : "No record is like that; clear the filter to see all.");
    state.places.note_item("records none");
    return;
  }
  table(*seen, state, out);
  coloured(quiet_color(), fmt::format("{}. {}{}", counted(seen->records.size(), "record"), difference_is,
                                      bench.records().reading() ? " Reading..." : ""));
}

}  // namespace laywright
