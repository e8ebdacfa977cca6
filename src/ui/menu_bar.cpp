#include "ui/menu_bar.h"

#include <array>
#include <filesystem>
#include <utility>

#include <fmt/format.h>

#include "ui/style.h"
#include "workbench/advice.h"
#include "workbench/command_table.h"

namespace laywright {
namespace {

constexpr std::array<std::string_view, 9> groups{"File", "Edit",    "Build", "Scrub", "Pick",
                                                 "View", "Compare", "Learn", "Help"};

bool is_on(const View& view, std::string_view name) {
  if (name == "Wedge") return view.wedge.has_value();
  if (name == "Axial cut") return view.axial_cut_rad.has_value();
  if (name == "Fade what is outside") return view.outside == Outside::faded;
  if (name == "Findings") return view.findings;
  if (name == "Dimensions") return view.dimensions;
  if (name == "See-through flanges") return view.flanges_see_through;
  return false;
}

std::string label_of(const CommandInfo& info, const Desk* desk) {
  if (desk == nullptr) return std::string(info.name);
  const History<PlanState>& history = desk->document->history();
  if (info.name == "Undo" && history.can_undo()) return fmt::format("Undo: {}", history.undo_name());
  if (info.name == "Redo" && history.can_redo()) return fmt::format("Redo: {}", history.redo_name());
  return std::string(info.name);
}

void recent_files(const Workbench& bench, PanelState& state, Commands& out) {
  const std::vector<std::string>& recent = bench.settings().recent;
  const bool open = ImGui::BeginMenu("Open a recent one", !recent.empty());
  if (!open) state.places.note_item("menu recent");
  if (!open) return;
  for (std::size_t i = 0; i < recent.size(); ++i) {
    const std::string& file = recent[i];
    ImGui::PushID(static_cast<int>(i));  // files of one name in several folders
    if (ImGui::MenuItem(std::filesystem::path(file).filename().c_str())) out.push_back(cmd::Open{file});
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
    if (ImGui::MenuItem(name.c_str(), nullptr, open)) out.push_back(cmd::OpenLesson{title.file});
    state.places.note_item(fmt::format("lesson {}", title.number));
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", title.aim.c_str());
  }
  if (shelf.titles.empty()) ImGui::TextDisabled("No lessons stand beside the program: open the file of one.");
  if (!shelf.unread.empty()) {
    ImGui::TextDisabled("Some lessons could not be read.");
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", to_text(shelf.unread.front()).c_str());
  }
  ImGui::Separator();
  if (ImGui::MenuItem("Open the file of a lesson...")) out.push_back(cmd::Ask{cmd::Question::file_to_open});
  ImGui::Separator();
}

void scale_items(const Workbench& bench, PanelState& state, Commands& out) {
  const double scale = bench.settings().scale;
  ImGui::Separator();
  if (ImGui::MenuItem("Full screen", "F11")) state.changes_screen = true;
  if (ImGui::MenuItem("Larger letters")) out.push_back(cmd::SetScale{scale * 1.15});
  if (ImGui::MenuItem("Smaller letters")) out.push_back(cmd::SetScale{scale / 1.15});
  if (ImGui::MenuItem("Usual letters", nullptr, false, scale != 1.0)) out.push_back(cmd::SetScale{1.0});
}

void items(const Workbench& bench, std::string_view group, PanelState& state, Commands& out) {
  const Desk* desk = bench.active();
  for (const CommandInfo& info : command_table()) {
    if (info.group != group) continue;
    const std::string reason = bench.why_not(info.command);
    const bool on = desk != nullptr && is_on(desk->stage.view, info.name);
    if (ImGui::MenuItem(label_of(info, desk).c_str(), std::string(info.keys).c_str(), on, reason.empty())) {
      out.push_back(info.command);
    }
    state.places.note_item(fmt::format("menu {}", info.name));
    if (ImGui::IsItemHovered(ImGuiHoveredFlags_AllowWhenDisabled)) {
      ImGui::SetTooltip("%s", reason.empty() ? std::string(info.help).c_str() : reason.c_str());
    }
    if (info.name == "Open...") recent_files(bench, state, out);
  }
}

// Of the first search that runs.
void search_progress(const Advice& advice, Commands& out) {
  constexpr std::pair<AdviceKind, const char*> kinds[] = {{AdviceKind::cause, "Finding the cause"},
                                                          {AdviceKind::better, "Better settings"},
                                                          {AdviceKind::study, "Study"},
                                                          {AdviceKind::draws, "Other draws"}};
  for (const auto& [kind, name] : kinds) {
    const InquiryStatus status = advice.status(kind);
    if (!status.busy) continue;
    ImGui::SameLine(ImGui::GetWindowWidth() - em(18.0F));
    const std::string words = fmt::format("{} {:.0f} %", name, 100.0 * status.share);
    ImGui::ProgressBar(static_cast<float>(status.share), {em(12.5F), 0.0F}, words.c_str());
    if (ImGui::SmallButton("Stop")) out.push_back(cmd::StopAdvice{kind});
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("Give it up (Escape); what was found before stays.");
    return;
  }
}

void progress(const Workbench& bench, Commands& out) {
  const Desk* desk = bench.active();
  if (desk == nullptr) return;
  const LayingStatus laying = desk->document->laying();
  if (!laying.busy) return search_progress(*desk->advice, out);
  const float width = em(17.0F);
  ImGui::SameLine(ImGui::GetWindowWidth() - width - em(1.0F));
  std::string words = fmt::format("{} {:.0f} %", laying.pass.full() ? "Laying" : "First look", 100.0 * laying.share);
  if (laying.seconds_left && *laying.seconds_left >= 1.0) words += fmt::format(", {:.0f} s", *laying.seconds_left);
  ImGui::ProgressBar(static_cast<float>(laying.share), {em(12.5F), 0.0F}, words.c_str());
  if (ImGui::SmallButton("Stop")) out.push_back(cmd::StopLaying{});
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("Stop laying (Escape); what is shown stays.");
}

}  // namespace

void menu_bar(const Workbench& bench, PanelState& state, Commands& out) {
  if (!ImGui::BeginMenuBar()) return;
  for (const std::string_view group : groups) {
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
  progress(bench, out);
  ImGui::EndMenuBar();
}

}  // namespace laywright
