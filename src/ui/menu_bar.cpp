#include "ui/panels.h"

#include <filesystem>
#include <utility>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "session/advice.h"
#include "session/advice_commands.h"
#include "session/command_rows.h"
#include "session/file_commands.h"
#include "session/lesson_commands.h"
#include "session/order_commands.h"
#include "session/plan_commands.h"
#include "session/window_commands.h"
#include "ui/style.h"

namespace laywright {
namespace {

void recent_files(const Workbench& bench, PanelState& state, Commands& out) {
  const std::vector<std::string>& recent = bench.settings().recent;
  const bool open = ImGui::BeginMenu("Open a recent one", !recent.empty());
  if (!open) state.places.note_item("menu recent");
  if (!open) return;
  for (std::size_t i = 0; i < recent.size(); ++i) {
    const std::string& file = recent[i];
    ImGui::PushID(static_cast<int>(i));  // files of one name in several folders
    if (ImGui::MenuItem(std::filesystem::path(file).filename().c_str())) out.push_back(cmd::open(file));
    ImGui::PopID();
    state.places.note_item(fmt::format("recent {}", i));
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", file.c_str());
  }
  ImGui::EndMenu();
}

void lessons(const Workbench& bench, PanelState& state, Commands& out) {
  const LessonShelf& shelf = bench.lessons();
  for (const LessonTitle& title : shelf.titles) {
    const bool open = bench.lesson() && bench.lesson()->lesson->file == title.file;
    const std::string name = fmt::format("{}  {}", title.number, title.title);
    if (ImGui::MenuItem(name.c_str(), nullptr, open)) out.push_back(cmd::open_lesson(title.file));
    state.places.note_item(fmt::format("lesson {}", title.number));
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", title.aim.c_str());
  }
  if (shelf.titles.empty()) ImGui::TextDisabled("No lessons stand beside the program: open the file of one.");
  if (!shelf.unread.empty()) {
    ImGui::TextDisabled("Some lessons could not be read.");
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", to_text(shelf.unread.front()).c_str());
  }
  ImGui::Separator();
  if (ImGui::MenuItem("Open the file of a lesson...")) out.push_back(cmd::ask(cmd::Question::file_to_open));
  ImGui::Separator();
}

void scale_items(const Workbench& bench, PanelState& state, Commands& out) {
  const double scale = bench.settings().scale;
  ImGui::Separator();
  if (ImGui::MenuItem("Full screen", "F11")) state.changes_screen = true;
  if (ImGui::MenuItem("Larger letters")) out.push_back(cmd::set_scale(scale * 1.15));
  if (ImGui::MenuItem("Smaller letters")) out.push_back(cmd::set_scale(scale / 1.15));
  if (ImGui::MenuItem("Usual letters", nullptr, false, scale != 1.0)) out.push_back(cmd::set_scale(1.0));
}

void items(const Workbench& bench, std::string_view group, PanelState& state, Commands& out) {
  const Stage* stage = bench.stage_in_hand();
  for (const CommandRow& row : command_rows()) {
    if (row.group != group) continue;
    const std::string reason = bench.why_not(row.command);
    const bool on = stage != nullptr && row.command.is_on(stage->view);
    const std::string more = row.command.label(bench);
    const std::string label(more.empty() ? row.name : more);
    if (ImGui::MenuItem(label.c_str(), std::string(row.keys).c_str(), on, reason.empty())) {
      out.push_back(row.command);
    }
    state.places.note_item(fmt::format("menu {}", row.name));
    if (ImGui::IsItemHovered(ImGuiHoveredFlags_AllowWhenDisabled)) {
      ImGui::SetTooltip("%s", reason.empty() ? std::string(row.help).c_str() : reason.c_str());
    }
    if (row.name == "Open...") recent_files(bench, state, out);
  }
}

void colours_progress(PanelState& state) {
  if (!state.colours.share) return;
  ImGui::SameLine(ImGui::GetWindowWidth() - em(18.0F));
  const std::string words = fmt::format("Drawing it off {}", percent_text(*state.colours.share, 0));
  ImGui::ProgressBar(static_cast<float>(*state.colours.share), {em(12.5F), 0.0F}, words.c_str());
  if (ImGui::SmallButton("Stop")) state.colours.stops = true;
  state.places.note_item("stop colours");
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("Give these colours up (Escape); those before come back.");
}

// In the menu bar's right end: how far it is, and the way to stop it.
void work_bar(const char* name, const InquiryStatus& status, const Command& stop, const char* tip, Commands& out) {
  ImGui::SameLine(ImGui::GetWindowWidth() - em(18.0F));
  const std::string words = fmt::format("{} {}", name, percent_text(status.share, 0));
  ImGui::ProgressBar(static_cast<float>(status.share), {em(12.5F), 0.0F}, words.c_str());
  if (ImGui::SmallButton("Stop")) out.push_back(stop);
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", tip);
}

// Of the first search that runs; false: none does.
bool search_progress(const Advice& advice, Commands& out) {
  constexpr std::pair<AdviceKind, const char*> kinds[] = {{AdviceKind::cause, "Finding the cause"},
                                                          {AdviceKind::better, "Better settings"},
                                                          {AdviceKind::study, "Study"},
                                                          {AdviceKind::draws, "Other draws"},
                                                          {AdviceKind::follow, "Following"}};
  for (const auto& [kind, name] : kinds) {
    const InquiryStatus status = advice.status(kind);
    if (!status.busy) continue;
    work_bar(name, status, cmd::stop_advice(kind), "Give it up (Escape); what was found before stays.", out);
    return true;
  }
  return false;
}

void progress(const Workbench& bench, PanelState& state, Commands& out) {
  const Desk* desk = bench.active();
  if (desk == nullptr || !desk->document->laying().busy) {
    if (desk != nullptr && search_progress(*desk->advice, out)) return;
    if (const InquiryStatus order = bench.order().status(); order.busy)
      return work_bar("Order", order, cmd::stop_laying_order(), "Give it up; what was laid before stays.", out);
    return colours_progress(state);
  }
  const LayingStatus laying = desk->document->laying();
  const float width = em(17.0F);
  ImGui::SameLine(ImGui::GetWindowWidth() - width - em(1.0F));
  std::string words =
      fmt::format("{} {}", laying.pass.full() ? "Laying" : "First look", percent_text(laying.share, 0));
  if (laying.seconds_left && *laying.seconds_left >= 1.0) words += ", " + duration_text(*laying.seconds_left);
  ImGui::ProgressBar(static_cast<float>(laying.share), {em(12.5F), 0.0F}, words.c_str());
  if (ImGui::SmallButton("Stop")) out.push_back(cmd::stop_laying());
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("Stop laying (Escape); what is shown stays.");
}

}  // namespace

void menu_bar(const Workbench& bench, PanelState& state, Commands& out) {
  if (!ImGui::BeginMenuBar()) return;
  for (const std::string_view group : command_groups()) {
    if (state.focus.menu == group) {
      ImGui::OpenPopup(std::string(group).c_str());
      state.focus.menu.clear();
    }
    if (!ImGui::BeginMenu(std::string(group).c_str())) {
      state.places.note_item(fmt::format("menu {}", group));
      continue;
    }
    if (group == "Learn") lessons(bench, state, out);
    items(bench, group, state, out);
    if (group == "View") scale_items(bench, state, out);
    if (group == "File") {
      ImGui::Separator();
      if (ImGui::MenuItem("Leave the program", "Ctrl+Q")) state.wants_to_quit = true;
    }
    ImGui::EndMenu();
  }
  progress(bench, state, out);
  ImGui::EndMenuBar();
}

}  // namespace laywright
