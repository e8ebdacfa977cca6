#include "ui/window.h"

#include <algorithm>
#include <array>
#include <ctime>

#include <fmt/format.h>

#include "desk/issue_words.h"
#include "session/file_commands.h"
#include "session/lesson_run.h"
#include "session/window_commands.h"
#include "ui/cause_panel.h"
#include "ui/dialogs.h"
#include "ui/drawer.h"
#include "ui/focus.h"
#include "ui/layout.h"
#include "ui/lesson_panel.h"
#include "ui/panels.h"
#include "ui/plan_field.h"
#include "ui/show_window.h"
#include "ui/style.h"

namespace laywright {
namespace {

using Panel = void (*)(const Workbench&, PanelState&, Commands&);
struct Tab {
  const char* name;
  Panel panel;
};

void tab(const Tab& tab, const Workbench& bench, PanelState& state, Commands& out) {
  const bool wanted = state.wanted_tab == tab.name || was_in_front(state, tab.name);
  if (state.wanted_tab == tab.name) state.wanted_tab.clear();
  const bool open = ImGui::BeginTabItem(tab.name, nullptr, wanted ? ImGuiTabItemFlags_SetSelected : 0);
  state.places.note_item(fmt::format("tab {}", tab.name));
  if (!open) return;
  state.focus.open_tabs.emplace_back(tab.name);
  ImGui::BeginChild(tab.name, {0.0F, 0.0F});
  take_keys_here(tab.name, false, state);
  tab.panel(bench, state, out);
  ImGui::EndChild();
  ImGui::EndTabItem();
}

void side(const char* name, float width, const std::vector<Tab>& tabs, const Workbench& bench, PanelState& state,
          Commands& out) {
  ImGui::BeginChild(name, {width, 0.0F}, false, ImGuiWindowFlags_AlwaysUseWindowPadding);
  if (ImGui::BeginTabBar("tabs")) {
    for (const Tab& t : tabs) tab(t, bench, state, out);
    ImGui::EndTabBar();
  }
  ImGui::EndChild();
}

// The open plans as tabs above the picture, when there is more than one. Which one is open is the workbench's to say.
void plan_tabs(const Workbench& bench, PanelState& state, Commands& out) {
  if (bench.documents().size() < 2 || bench.lesson() ||
      !ImGui::BeginTabBar("plans", ImGuiTabBarFlags_FittingPolicyScroll))
    return;
  for (std::size_t i = 0; i < bench.documents().size(); ++i) {
    const Desk& desk = bench.documents()[i];
    const bool active = bench.active_index() == i;
    const bool comes = active && state.plan_tab != desk.id;
    if (comes) state.plan_tab = desk.id;
    const std::string name =
        fmt::format("{}{}###{}", desk.document->name(), desk.document->dirty() ? " *" : "", desk.id);
    const bool drawn = ImGui::BeginTabItem(name.c_str(), nullptr, comes ? ImGuiTabItemFlags_SetSelected : 0);
    if (ImGui::IsItemActivated() && !active) out.push_back(cmd::activate(i));
    state.places.note_item(fmt::format("plan tab {}", i));
    if (ImGui::IsItemHovered()) {
      const std::string path = desk.document->path().string();
      ImGui::SetTooltip("%s", (path.empty() ? desk.document->title() + ", not saved yet" : path).c_str());
    }
    if (drawn) ImGui::EndTabItem();
  }
  ImGui::EndTabBar();
}

// A mistake in the plan by its field's name; one in a file that is no plan by its place there.
std::string issue_line(const Issue& issue, const Workbench& bench) {
  const Desk* desk = bench.active();
  const bool of_plan = desk != nullptr && !issue.key.empty() && issue.file == desk->document->path().string();
  if (of_plan) return issue_words(issue, bench.rows());
  // The file is named above.
  const std::string place = issue.line > 0 ? fmt::format("Line {}: ", issue.line) : std::string();
  const std::string key = issue.key.empty() ? std::string() : fmt::format("{} ", issue.key);
  const std::string allowed = issue.allowed.empty() ? std::string() : fmt::format(" (allowed: {})", issue.allowed);
  return fmt::format("{}{}{}{}", place, key, issue.what, allowed);
}

bool any_notice(const Workbench& bench) {
  const Desk* desk = bench.active();
  return !bench.notices().empty() || !bench.recovery_offers().empty() ||
         (desk != nullptr && desk->document->on_disk() != OnDisk::same);
}

// Two windows can leave work on the same plan behind.
std::string when(std::int64_t time_s) {
  if (time_s <= 0) return "";
  const std::time_t time = static_cast<std::time_t>(time_s);
  std::tm parts{};
  if (::localtime_r(&time, &parts) == nullptr) return "";
  std::array<char, 64> text{};
  return {text.data(), std::strftime(text.data(), text.size(), ", kept on %d %b at %H:%M:%S", &parts)};
}

void notices(const Workbench& bench, PanelState& state, Commands& out) {
  const Desk* desk = bench.active();
  bool& any = state.focus.messages = false;
  const auto first = [&] {
    if (!any) take_keys_to_item("messages", state);
    any = true;
  };
  if (any_notice(bench)) ImGui::SetCursorPosY(ImGui::GetCursorPosY() + em(0.4F));
  const Theme theme = desk != nullptr ? desk->stage.view.theme : bench.settings().view.theme;
  for (std::size_t i = 0; i < bench.notices().size(); ++i) {
    const Notice& notice = bench.notices()[i];
    ImGui::PushID(static_cast<int>(i));
    if (ImGui::SmallButton("x")) out.push_back(cmd::dismiss_notice(i));
    first();
    state.places.note_item("dismiss notice");
    ImGui::SameLine();
    ImGui::PushStyleColor(ImGuiCol_Text,
                          notice.severity == Severity::error ? error_color(theme) : warning_color(theme));
    ImGui::TextWrapped("%s", notice.text.c_str());
    for (const Issue& issue : notice.issues) ImGui::TextWrapped("%s", issue_line(issue, bench).c_str());
    ImGui::PopStyleColor();
    ImGui::PopID();
  }
  for (std::size_t i = 0; i < bench.recovery_offers().size(); ++i) {
    const RecoveryCopy& work = bench.recovery_offers()[i].work;
    ImGui::PushID(static_cast<int>(i) + 1000);
    ImGui::AlignTextToFramePadding();
    ImGui::TextWrapped("Unsaved work on %s%s", work.file.empty() ? "a plan without a file" : work.file.c_str(),
                       when(work.time_s).c_str());
    if (ImGui::SmallButton("Open it")) out.push_back(cmd::recover(i));
    first();
    state.places.note_item(fmt::format("recover {}", i));
    ImGui::SameLine();
    if (ImGui::SmallButton("Drop it")) out.push_back(cmd::drop_recovery(i));
    state.places.note_item(fmt::format("drop recovery {}", i));
    ImGui::PopID();
  }
  if (desk == nullptr || desk->document->on_disk() == OnDisk::same) return;
  ImGui::PushStyleColor(ImGuiCol_Text, warning_color(theme));
  ImGui::TextWrapped("%s", desk->document->on_disk() == OnDisk::gone
                               ? "The plan's file is gone; save it to have it again."
                               : "Somebody else has changed the plan's file.");
  ImGui::PopStyleColor();
  if (desk->document->on_disk() == OnDisk::changed) {
    if (ImGui::SmallButton("Read theirs")) out.push_back(cmd::revert());
    first();
    state.places.note_item("read theirs");
    ImGui::SameLine();
  }
  if (ImGui::SmallButton("Keep mine")) out.push_back(cmd::keep_mine());
  first();
  state.places.note_item("keep mine");
}

// What the picture shows when it is not the plan as it stands.
void hint_line(const Workbench& bench) {
  const std::string hint = bench.hint();
  if (hint.empty() || !bench.wound()) return;
  ImGui::SetCursorPosY(ImGui::GetCursorPosY() + em(0.4F));
  ImGui::PushStyleColor(ImGuiCol_Text, warning_color(bench.active()->stage.view.theme));
  ImGui::TextWrapped("%s", hint.c_str());
  ImGui::PopStyleColor();
}

// Words in the picture's upper left corner, in so many lines from the top.
void words_in_picture(const Box2& box, const std::string& words, float line, ImU32 color) {
  ImDrawList& canvas = *ImGui::GetWindowDrawList();
  const ImVec2 at{box.x + em(0.7F), box.y + em(0.6F + 1.7F * line)}, size = ImGui::CalcTextSize(words.c_str());
  const float pad = em(0.3F);
  canvas.AddRectFilled({at.x - pad, at.y - pad}, {at.x + size.x + pad, at.y + size.y + pad},
                       ImGui::GetColorU32(ImGuiCol_PopupBg), pad);
  canvas.AddText(at, color, words.c_str());
}

void picture_name(const Box2& box, const std::string& name) {
  words_in_picture(box, name, 0.0F, ImGui::GetColorU32(ImGuiCol_Text));
}

// Of the other picture, and of the active one.
std::array<std::string, 2> names_of_pictures(const Workbench& bench) {
  if (!bench.lesson()) return {bench.comparison()->name, bench.active()->document->name()};
  const LessonRun& run = *bench.lesson();
  const auto caption = [&](Which which) { return caption_of(run, which, *bench.active()->document, bench.rows()); };
  const Which own = in_hand(run.now());
  return {caption(own == Which::first ? Which::second : Which::first), caption(own)};
}

WindowLayout pictures(const Workbench& bench, float height, PanelState& state, Commands& out) {
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float width = std::max(1.0F, ImGui::GetContentRegionAvail().x);
  WindowLayout layout;
  layout.picture = {at.x, at.y, width, height};
  if (bench.comparison()) {
    const float half = std::max(1.0F, 0.5F * (width - em(0.4F)));
    layout.other = Box2{at.x, at.y, half, height};
    layout.picture = {at.x + width - half, at.y, half, height};
    if (bench.comparison()->on_right) std::swap(*layout.other, layout.picture);
    picture_area(bench, *layout.other, false, state, out);
  }
  picture_area(bench, layout.picture, true, state, out);
  state.places.note("picture", layout.picture);
  if (layout.other) {
    state.places.note("other picture", *layout.other);
    const auto [other, own] = names_of_pictures(bench);
    picture_name(*layout.other, other);
    picture_name(layout.picture, own);
  }
  if (const std::string words = bench.quick_look(); !words.empty()) {
    const ImU32 color = ImGui::ColorConvertFloat4ToU32(warning_color(bench.active()->stage.view.theme));
    words_in_picture(layout.picture, words, layout.other ? 1.0F : 0.0F, color);
  }
  ImGui::SetCursorScreenPos({at.x, at.y + height});
  return layout;
}

WindowLayout middle(const Workbench& bench, const Shown& shown, float width, PanelState& state, Commands& out) {
  ImGui::BeginChild(
      "middle", {width, 0.0F}, false,
      ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse | ImGuiWindowFlags_NoBackground);
  plan_tabs(bench, state, out);
  notices(bench, state, out);
  hint_line(bench);
  verdict_bar(bench, state, out);
  const float bar =
      bench.wound() ? ImGui::GetFrameHeightWithSpacing() + ImGui::GetTextLineHeightWithSpacing() : 0.0F;
  const float drawer = drawer_height(bench, ImGui::GetContentRegionAvail().y, state);
  const float height = std::max(em(5.0F), ImGui::GetContentRegionAvail().y - bar - drawer - em(0.5F));
  const WindowLayout layout = pictures(bench, height, state, out);
  ImGui::SetCursorPosY(ImGui::GetCursorPosY() + em(0.4F));
  scrub_bar(bench, state, out);
  draw_drawer(bench, shown, state, out);
  ImGui::EndChild();
  return layout;
}

// A new page comes to the front.
void show_lesson_page(const Workbench& bench, PanelState& state) {
  std::string page;
  if (bench.lesson()) page = fmt::format("{} {}", bench.lesson()->lesson->file, bench.lesson()->step);
  if (page == state.lesson_page) return;
  state.lesson_page = std::move(page);
  state.wanted_tab = bench.lesson() ? "Lesson" : "";
}

}  // namespace

WindowLayout draw_window(const Workbench& bench, const Shown& shown, PanelState& state, Commands& out) {
  state.places.at.clear();
  state.focus.open_tabs.clear();
  const bool clicked = ImGui::IsMouseClicked(ImGuiMouseButton_Left) || ImGui::IsMouseClicked(ImGuiMouseButton_Right);
  if (clicked) state.focus.panel.clear();
  if (bench.showing() && !state.wants_to_quit) return draw_show(bench, state);
  state.show_keys_until.reset();
  const ImVec2 size = ImGui::GetIO().DisplaySize;
  ImGui::SetNextWindowPos({0.0F, 0.0F});
  ImGui::SetNextWindowSize(size);
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0.0F, 0.0F});
  ImGui::PushStyleVar(ImGuiStyleVar_WindowRounding, 0.0F);
  // The picture lies beneath: the window itself has no ground, the panels have.
  ImGui::Begin("laywright", nullptr,
               ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                   ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_MenuBar |
                   ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoScrollWithMouse);
  ImGui::PopStyleVar(2);
  menu_bar(bench, state, out);
  show_new_search(bench, state);
  // Where there is no room for two sides, one holds all; a lesson leaves the room to its pictures.
  const bool narrow = size.x < em(70.0F) || bench.lesson();
  const float wide = bench.lesson() ? em(27.0F) : narrow ? em(22.5F) : em(23.0F);
  const float left = std::min(wide, 0.42F * size.x);
  const float right = narrow ? 0.0F : std::min(em(22.0F), 0.3F * size.x);
  std::vector<Tab> plan{{"Plan", plan_panel}};
  std::vector<Tab> build{
      {"Findings", findings_panel}, {"View", view_panel}, {"Turn", turn_panel}, {"Machine", machine_panel}};
  if (bench.lesson()) build.pop_back();  // what the machine does is not of the lesson
  if (narrow) plan.insert(plan.end(), build.begin(), build.end());
  if (bench.lesson()) plan.insert(plan.begin(), {"Lesson", lesson_panel});
  show_lesson_page(bench, state);
  side("left", left, plan, bench, state, out);
  ImGui::SameLine(0.0F, em(0.4F));
  const float room = ImGui::GetContentRegionAvail().x - right - (narrow ? em(0.4F) : em(0.8F));
  const WindowLayout layout = middle(bench, shown, room, state, out);
  if (!narrow) {
    ImGui::SameLine(0.0F, em(0.4F));
    side("right", right, build, bench, state, out);
  }
  draw_dialogs(bench, state, out);
  ImGui::End();
  leave_lost_field(bench, state, out);
  settle_keys(state);
  return layout;
}

std::optional<double> seconds_to_next_frame(const PanelState& state) {
  if (state.section.work.ready() || state.map.work.ready() || state.sheet.work.ready()) return 0.0;
  std::optional<double> soonest;
  if (state.show_keys_until) {
    const std::chrono::duration<double> left = *state.show_keys_until - TypingState::Clock::now();
    soonest = std::max(0.0, left.count());
  }
  for (const auto& due : {seconds_to_typed(state), state.files.list.seconds_to_look()}) {
    if (due) soonest = std::max(0.0, soonest ? std::min(*soonest, *due) : *due);
  }
  return soonest;
}

}  // namespace laywright
