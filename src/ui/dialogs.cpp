#include "ui/dialogs.h"

#include <fmt/format.h>

#include "session/command_rows.h"
#include "session/compare_commands.h"
#include "session/file_commands.h"
#include "session/window_commands.h"
#include "ui/keys.h"
#include "ui/modal.h"
#include "ui/style.h"

namespace laywright {
namespace {

void help_row(std::string_view& group, PanelState& state, const KeyHelp& help) {
  if (help.group != group) {
    group = help.group;
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    ImGui::PushFont(state.strong);
    ImGui::TextUnformatted(std::string(group).c_str());
    ImGui::PopFont();
  }
  ImGui::TableNextRow();
  for (const std::string_view text : {help.name, help.keys}) {
    ImGui::TableNextColumn();
    ImGui::TextUnformatted(std::string(text).c_str());
  }
  ImGui::TableNextColumn();
  ImGui::TextWrapped("%s", std::string(help.help).c_str());
}

void help_sheet(PanelState& state, Commands& out) {
  if (!begin_modal("Keys and commands", 46.0F, 40.0F)) return;
  ImGui::BeginChild("keys", {0.0F, -em(2.6F)});
  if (ImGui::BeginTable("keys", 3, ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit)) {
    ImGui::TableSetupColumn("name");
    ImGui::TableSetupColumn("keys");
    ImGui::TableSetupColumn("help", ImGuiTableColumnFlags_WidthStretch);
    std::string_view group;
    for (const KeyHelp& help : key_help()) help_row(group, state, help);
    for (const CommandRow& row : command_rows()) help_row(group, state, {row.group, row.name, row.keys, row.help});
    ImGui::EndTable();
  }
  ImGui::EndChild();
  ImGui::Spacing();
  if (ImGui::Button("Close") || escape_pressed()) {
    out.push_back(cmd::answered());
    ImGui::CloseCurrentPopup();
  }
  state.places.note_item("help close");
  ImGui::EndPopup();
}

void unsaved_sheet(const Workbench& bench, PanelState& state, Commands& out) {
  if (!begin_modal("Unsaved changes", 28.0F, 0.0F)) return;
  const bool has_file = !bench.active()->document->path().empty();
  ImGui::TextWrapped(
      "%s", fmt::format("\"{}\" has changes that are not saved.", bench.active()->document->name()).c_str());
  ImGui::Spacing();
  if (ImGui::Button("Save and close")) {
    out.push_back(cmd::answered());
    out.push_back(cmd::save());
    if (has_file) out.push_back(cmd::close(false));
    ImGui::CloseCurrentPopup();
  }
  ImGui::SameLine();
  if (ImGui::Button("Close without saving")) {
    out.push_back(cmd::close(true));
    ImGui::CloseCurrentPopup();
  }
  ImGui::SameLine();
  if (ImGui::Button("Cancel") || escape_pressed()) {
    out.push_back(cmd::answered());
    ImGui::CloseCurrentPopup();
  }
  state.places.note_item("unsaved cancel");
  ImGui::EndPopup();
}

void compare_sheet(const Workbench& bench, PanelState& state, Commands& out) {
  if (!begin_modal("Compare with", 28.0F, 0.0F)) return;
  bool any = false;
  for (std::size_t i = 0; i < bench.documents().size(); ++i) {
    if (bench.active_index() == i) continue;
    any = true;
    if (ImGui::Selectable(bench.documents()[i].document->name().c_str())) {
      out.push_back(cmd::compare_with(i));
      ImGui::CloseCurrentPopup();
    }
    state.places.note_item(fmt::format("compare {}", i));
  }
  if (!any) {
    ImGui::TextWrapped(
        "No other plan is open. Open a second one (Ctrl+O), or keep this build (K) and change the plan.");
  }
  ImGui::Spacing();
  if (ImGui::Button("Cancel") || escape_pressed()) {
    out.push_back(cmd::answered());
    ImGui::CloseCurrentPopup();
  }
  ImGui::EndPopup();
}

void leave_sheet(const Workbench& bench, PanelState& state, Commands& out) {
  if (!bench.any_unsaved()) {
    state.quits = true;
    return;
  }
  if (!begin_modal("Leave the program", 30.0F, 0.0F)) return;
  ImGui::TextWrapped("Not saved yet:");
  for (const Desk& desk : bench.documents()) {
    if (desk.document->dirty()) ImGui::BulletText("%s", desk.document->name().c_str());
  }
  ImGui::TextWrapped("Unsaved work is kept and offered at the next start.");
  ImGui::Spacing();
  const Desk* desk = bench.active();
  if (desk != nullptr && desk->document->dirty() && !desk->document->path().empty()) {
    if (ImGui::Button("Save this plan")) out.push_back(cmd::save());
    ImGui::SameLine();
  }
  if (ImGui::Button("Leave")) state.quits = true;
  state.places.note_item("leave now");
  ImGui::SameLine();
  if (ImGui::Button("Stay") || escape_pressed()) {
    state.wants_to_quit = false;
    ImGui::CloseCurrentPopup();
  }
  ImGui::EndPopup();
}

}  // namespace

void draw_dialogs(const Workbench& bench, PanelState& state, Commands& out) {
  if (state.wants_to_quit) return leave_sheet(bench, state, out);
  if (!bench.question()) return;
  switch (*bench.question()) {
    case cmd::Question::new_plan: return new_plan_dialog(bench, state, out);
    case cmd::Question::file_to_open: return file_dialog(bench, FileUse::open_plan, state, out);
    case cmd::Question::file_to_save: return file_dialog(bench, FileUse::save_plan, state, out);
    case cmd::Question::what_to_compare: return compare_sheet(bench, state, out);
    case cmd::Question::close_unsaved: return unsaved_sheet(bench, state, out);
    case cmd::Question::help: return help_sheet(state, out);
    case cmd::Question::setup_sheet: return sheet_dialog(bench, state, out);
    case cmd::Question::sheet_to_save: return file_dialog(bench, FileUse::save_sheet, state, out);
    case cmd::Question::better_settings: return better_dialog(bench, state, out);
    case cmd::Question::share_page: return page_dialog(bench, state, out);
    case cmd::Question::page_to_save: return file_dialog(bench, FileUse::save_page, state, out);
    case cmd::Question::readings_to_open: return file_dialog(bench, FileUse::open_readings, state, out);
    case cmd::Question::readings_to_save: return file_dialog(bench, FileUse::save_readings, state, out);
    case cmd::Question::records: return records_dialog(bench, state, out);
    case cmd::Question::order: return order_dialog(bench, state, out);
    case cmd::Question::order_to_open: return file_dialog(bench, FileUse::open_order, state, out);
    case cmd::Question::order_folder: return file_dialog(bench, FileUse::write_order, state, out);
  }
}

}  // namespace laywright
