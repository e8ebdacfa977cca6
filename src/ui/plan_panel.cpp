#include "ui/panels.h"

#include <algorithm>
#include <cctype>

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include "base/spelling.h"
#include "desk/field_help.h"
#include "desk/issue_words.h"
#include "plan/mixed_colour.h"
#include "session/file_commands.h"
#include "session/plan_commands.h"
#include "session/window_commands.h"
#include "ui/colour_field.h"
#include "ui/plan_field.h"
#include "ui/style.h"

namespace laywright {
namespace {

ImVec4 color_of_issue(const Issue& issue, Theme theme) {
  return issue.severity == Severity::error ? error_color(theme) : warning_color(theme);
}

void issue_lines(const Issues& issues, const std::vector<FieldRow>& rows, Theme theme) {
  for (const Issue& issue : issues) {
    ImGui::PushStyleColor(ImGuiCol_Text, color_of_issue(issue, theme));
    ImGui::PushTextWrapPos(0.0F);
    ImGui::TextUnformatted(issue_words(issue, rows).c_str());
    ImGui::PopTextWrapPos();
    ImGui::PopStyleColor();
  }
}

void help_tip(const FieldRow& row) {
  if (!ImGui::IsItemHovered(ImGuiHoveredFlags_AllowWhenDisabled)) return;
  ImGui::BeginTooltip();
  ImGui::PushTextWrapPos(em(24.0F));
  ImGui::TextUnformatted(std::string(row.help.explanation).c_str());
  ImGui::TextDisabled("Allowed: %s", row.allowed.c_str());
  if (!row.idle.empty()) ImGui::TextDisabled("Counts for nothing now: %s.", row.idle.c_str());
  if (row.is_default && row.value) ImGui::TextDisabled("As by default; the plan does not say.");
  ImGui::PopTextWrapPos();
  ImGui::EndTooltip();
}

void choice_field(const FieldRow& row, Commands& out) {
  const auto& choices = row.info->choices;
  const auto chosen = row.value ? static_cast<std::size_t>(*row.value) : choices.size();
  const char* shown = chosen < choices.size() ? choices[chosen].c_str() : row.text.c_str();
  if (!ImGui::BeginCombo("##value", shown)) return;
  for (std::size_t i = 0; i < choices.size(); ++i) {
    if (ImGui::Selectable(choices[i].c_str(), i == chosen)) {
      out.push_back(cmd::set_field(row.path, static_cast<double>(i), 0));
    }
  }
  ImGui::EndCombo();
}

bool is_lacking(const FieldRow& row) { return row.info->required && row.text.empty(); }

// What all fields of the form have in common.
struct Form {
  const Workbench& bench;
  const Desk& desk;
  const std::vector<FieldRow>& rows;
  Theme theme;
  float unit_width;
  double fiber_mm;
};

void name_cell(const FieldRow& row, bool quiet) {
  ImGui::AlignTextToFramePadding();
  ImGui::PushStyleColor(ImGuiCol_Text, quiet ? quiet_color() : ImGui::GetStyleColorVec4(ImGuiCol_Text));
  ImGui::TextUnformatted(capitalised(std::string(row.help.name)).c_str());
  ImGui::PopStyleColor();
  help_tip(row);
}

void value_cell(const Form& form, const FieldRow& row, bool quiet, PanelState& state, Commands& out) {
  const bool choice = row.info->kind == FieldKind::choice;
  // A choice has no unit, and its words need the room.
  const float behind = !choice                  ? form.unit_width + step_buttons_width()
                       : takes_mixed(*row.info) ? colour_patch_width()
                                                : 0.0F;
  ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x - behind);
  const bool wrong = has_error(row.issues) || is_lacking(row);
  if (wrong) ImGui::PushStyleColor(ImGuiCol_Border, error_color(form.theme));
  if (wrong) ImGui::PushStyleVar(ImGuiStyleVar_FrameBorderSize, 1.0F);
  if (quiet) ImGui::PushStyleColor(ImGuiCol_Text, quiet_color());
  choice ? choice_field(row, out) : text_field(form.desk, row, form.fiber_mm, state, out);
  if (quiet) ImGui::PopStyleColor();
  if (wrong) ImGui::PopStyleVar();
  if (wrong) ImGui::PopStyleColor();
  state.places.note_item("field " + row.path);
  if (!ImGui::IsItemActive() && row.issues.empty()) help_tip(row);  // it would hide what is wrong
  if (takes_mixed(*row.info)) colour_patch(form.bench, row, state, out);
  if (choice) return;
  step_buttons(form.desk, row, form.fiber_mm, state, out);
  ImGui::SameLine(0.0F, em(0.35F));
  ImGui::TextDisabled("%s", row.unit != nullptr ? std::string(row.unit->name).c_str() : "");
}

// What is wrong with it, what is dialled for it, and, while it is typed into, what it is.
void word_cell(const Form& form, const FieldRow& row, PanelState& state) {
  const TypingState& typing = state.typing;
  const bool typed_here = typing.path == row.path;
  const bool waits = typed_here && typing.text != typing.sent;
  if (!typed_here && row.issues.empty() && row.dialled.empty()) return;
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::TableNextColumn();
  if (!waits) issue_lines(row.issues, form.rows, form.theme);
  ImGui::PushTextWrapPos(0.0F);
  if (!row.dialled.empty() && !waits) {
    ImGui::TextUnformatted(row.dialled.c_str());
    state.places.note_item("dialled " + row.path);
  }
  if (waits) ImGui::TextDisabled("Enter takes it, Escape gives it up. Allowed: %s.", row.allowed.c_str());
  if (typed_here && !waits && row.issues.empty()) {
    ImGui::TextDisabled("%s", fmt::format("{} Allowed: {}.", row.help.explanation, row.allowed).c_str());
  }
  ImGui::PopTextWrapPos();
}

void field(const Form& form, const FieldRow& row, PanelState& state, Commands& out) {
  ImGui::PushID(row.path.c_str());
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  const bool quiet = !row.idle.empty() || (row.is_default && row.issues.empty() && !is_lacking(row));
  name_cell(row, quiet);
  ImGui::TableNextColumn();
  value_cell(form, row, quiet, state, out);
  word_cell(form, row, state);
  ImGui::PopID();
}

void wind_end_choice(const PlanDraft& draft, PanelState& state, Commands& out) {
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted("Ends by");
  for (const WindEnd end : {WindEnd::length, WindEnd::turns, WindEnd::diameter}) {
    ImGui::SameLine();
    if (ImGui::RadioButton(name_of(end), wind_end_of(draft) == end)) out.push_back(cmd::set_wind_end(end));
    state.places.note_item(fmt::format("wind end {}", name_of(end)));
  }
}

// Before the fields of a table; false when they are not to be shown.
bool table_heading(const std::string& table, const PlanDraft& draft, PanelState& state, Commands& out) {
  const bool step = table.starts_with("wind.step");
  std::string title =
      step ? fmt::format("Step {}", std::stoul(table.substr(10)) + 1) : std::string(table_title(table));
  const bool open_first = table != "takeup" && table != "limits";
  ImGui::PushFont(state.strong);
  const bool open = ImGui::CollapsingHeader(fmt::format("{}###{}", capitalised(title), table).c_str(),
                                            open_first ? ImGuiTreeNodeFlags_DefaultOpen : ImGuiTreeNodeFlags_None);
  ImGui::PopFont();
  state.places.note_item("heading " + table);
  if (!open) return false;
  if (table == "wind") wind_end_choice(draft, state, out);
  if (step && ImGui::SmallButton(fmt::format("Remove this step##{}", table).c_str())) {
    out.push_back(cmd::remove_step(std::stoul(table.substr(10))));
  }
  if (table == "takeup") {
    bool has_one = draft.takeup.has_value();
    if (ImGui::Checkbox("The plan has a take-up", &has_one)) out.push_back(cmd::set_takeup(has_one));
    return draft.takeup.has_value();
  }
  return true;
}

void fields_of(const Form& form, std::size_t first, std::size_t end, PanelState& state, Commands& out) {
  if (!ImGui::BeginTable("fields", 2, ImGuiTableFlags_SizingStretchProp)) return;
  ImGui::TableSetupColumn("name", ImGuiTableColumnFlags_WidthStretch, 0.49F);
  ImGui::TableSetupColumn("value", ImGuiTableColumnFlags_WidthStretch, 0.51F);
  for (std::size_t i = first; i < end; ++i) field(form, form.rows[i], state, out);
  ImGui::EndTable();
}

// Title, notes, and what the wind is made for.
void texts_of(const PlanDraft& draft, PanelState& state, Commands& out) {
  const auto words = [&](const std::string& name, const char* hint, const std::string& now, bool lines,
                         auto command) {
    TypingState& typing = state.typing;
    std::string text = typing.path == name ? typing.text : now;
    ImGui::SetNextItemWidth(-1.0F);
    const bool changed = lines
                             ? ImGui::InputTextMultiline(fmt::format("##{}", name).c_str(), &text, {-1.0F, em(3.6F)})
                             : ImGui::InputTextWithHint(fmt::format("##{}", name).c_str(), hint, &text);
    if (ImGui::IsItemActivated()) typing = {name, now, now, ++state.gestures, 0, 0, {}, true};
    if (typing.path == name) typing.seen = true;
    if (changed && typing.path == name) {
      typing.text = typing.sent = text;
      out.push_back(command(text, typing.gesture));
    }
    if (ImGui::IsItemDeactivated() && typing.path == name) typing = {};
    state.places.note_item(name);
  };
  words("title", "Title", draft.title, false,
        [](const std::string& t, std::uint64_t g) { return Command{cmd::set_title(t, g)}; });
  const auto open = [](const char* heading, bool empty) {
    return ImGui::TreeNodeEx(heading, empty ? 0 : ImGuiTreeNodeFlags_DefaultOpen);
  };
  if (open("Notes", draft.notes.empty())) {
    words("notes", "", draft.notes, true,
          [](const std::string& t, std::uint64_t g) { return Command{cmd::set_notes(t, g)}; });
    ImGui::TreePop();
  }
  if (open("Order", draft.order == PlanOrder{})) {
    for (const OrderField& field : order_fields()) {
      const FieldHelp help = help_for(field.path());
      words(field.path(), capitalised(std::string(help.name)).c_str(), draft.order.*field.text, false,
            [&](const std::string& t, std::uint64_t g) { return Command{cmd::set_order_text(field, t, g)}; });
      if (ImGui::IsItemHovered())
        ImGui::SetTooltip("%s\n%s", capitalised(std::string(help.name)).c_str(),
                          std::string(help.explanation).c_str());
    }
    ImGui::TreePop();
  }
}

}  // namespace

void plan_panel(const Workbench& bench, PanelState& state, Commands& out) {
  const Desk* desk = bench.active();
  if (desk == nullptr) {
    ImGui::TextWrapped("%s", bench.hint().c_str());
    if (ImGui::Button("Open...")) out.push_back(cmd::ask(cmd::Question::file_to_open));
    ImGui::SameLine();
    if (ImGui::Button("Open the sample")) out.push_back(cmd::open_sample());
    return;
  }
  const Document& document = *desk->document;
  const PlanDraft& draft = document.state().draft;
  const std::vector<FieldRow>& rows = bench.rows();
  const Form form{bench,
                  *desk,
                  rows,
                  desk->stage.view.theme,
                  em(desk->stage.view.units == Units::inch ? 4.9F : 3.3F),
                  draft.fiber.diameter_mm};
  ImGui::PushID(static_cast<int>(desk->id));  // a field of another plan is another field
  texts_of(draft, state, out);
  issue_lines(other_issues(document.state(), document.issues()), rows, form.theme);
  if (!unknown_in(document.state()).empty() && ImGui::Button("Leave out what is unknown")) {
    out.push_back(cmd::leave_out_unknown());
  }
  for (std::size_t first = 0; first < rows.size();) {
    std::size_t end = first;
    while (end < rows.size() && rows[end].table == rows[first].table) ++end;
    ImGui::PushID(static_cast<int>(first));
    if (table_heading(rows[first].table, draft, state, out)) fields_of(form, first, end, state, out);
    ImGui::PopID();
    first = end;
  }
  if (ImGui::Button("Add a step")) out.push_back(cmd::add_step());
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("Change pitch or stops from a layer on.");
  ImGui::PopID();
}

}  // namespace laywright
