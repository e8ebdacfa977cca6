#include "ui/keys.h"

#include <algorithm>
#include <array>
#include <iterator>

#include "scene/camera.h"
#include "scene/pick.h"
#include "scene/scene_source.h"
#include "session/advice.h"
#include "session/camera_commands.h"
#include "session/command_rows.h"
#include "session/file_commands.h"
#include "session/records_commands.h"
#include "session/scrub_commands.h"
#include "ui/cause_panel.h"
#include "ui/focus.h"
#include "ui/lesson_panel.h"
#include "ui/plan_field.h"
#include "ui/show_window.h"

namespace laywright {
namespace {

constexpr std::array<std::string_view, 10> panels_by_number{"",        "Plan", "Findings", "View",   "Turn",
                                                            "Section", "Map",  "Layers",   "Curves", "Comparison"};

bool popup_open() { return ImGui::IsPopupOpen(nullptr, ImGuiPopupFlags_AnyPopupId | ImGuiPopupFlags_AnyPopupLevel); }

void go_around(int way, PanelState& state) {
  std::vector<std::string> places{""};
  if (state.focus.messages) places.emplace_back("messages");
  places.insert(places.end(), state.focus.open_tabs.begin(), state.focus.open_tabs.end());
  const auto here = std::find(places.begin(), places.end(), state.focus.panel);
  const auto size = static_cast<std::ptrdiff_t>(places.size());
  const auto next = ((here == places.end() ? 0 : here - places.begin()) + way + size) % size;
  if (next == 0) return go_to_picture(state);
  go_to_panel(places[static_cast<std::size_t>(next)], state);
}

void next_plan(int way, const Workbench& bench, Commands& out) {
  const auto size = static_cast<int>(bench.documents().size());
  if (size < 2) return;
  const int next = (static_cast<int>(*bench.active_index()) + way + size) % size;
  out.push_back(cmd::activate(static_cast<std::size_t>(next)));
}

// The picture a tenth of its size aside.
void move_picture(double right, double up, const Workbench& bench, Commands& out) {
  if (!bench.wound()) return;
  const View& view = bench.active()->stage.view;
  Camera camera = view.camera;
  const double mm = mm_per_px(view) * 0.1;
  camera.target += right_of(camera) * (right * mm * view.width_px) + up_of(camera) * (up * mm * view.height_px);
  out.push_back(cmd::set_camera(camera));
}

void pick_in_the_middle(const Workbench& bench, PanelState& state, Commands& out) {
  const WoundPtr wound = bench.wound();
  if (!wound) return;
  const View& view = bench.active()->stage.view;
  const auto hit = pick_fiber(wound->source, view, ray_through(view, 0.5 * view.width_px, 0.5 * view.height_px));
  if (hit) state.wanted_tab = "Turn";
  out.push_back(cmd::pick_node(hit ? std::optional<std::size_t>(hit->node) : std::nullopt));
}

// Closed, as high as usual, most of the height.
void next_drawer(PanelState& state) {
  constexpr float high = 200.0F;  // letters; more than there are
  if (!state.drawer_open) {
    state.drawer_open = true;
    state.drawer_height = 0.0F;
  } else if (state.drawer_height < high) {
    state.drawer_height = high;
  } else {
    state.drawer_open = false;
  }
}

std::string_view menu_of(std::string_view keys) {
  if (keys == "F10") return "File";
  const std::vector<std::string_view>& menus = command_groups();
  const bool letter = keys.size() == 5 && keys.starts_with("Alt+");
  const auto found = std::find_if(menus.begin(), menus.end(),
                                  [&](std::string_view menu) { return letter && menu.front() == keys.back(); });
  return found == menus.end() ? "" : *found;
}

// Keys about the window; they hold while something is typed, too.
bool window_key(std::string_view keys, const Workbench& bench, PanelState& state, Commands& out) {
  const bool numbered = keys.size() == 6 && keys.starts_with("Ctrl+") && keys[5] >= '0' && keys[5] <= '9';
  if (keys == "F6" || keys == "Shift+F6") {
    go_around(keys == "F6" ? 1 : -1, state);
  } else if (numbered) {
    const std::string_view panel = panels_by_number[static_cast<std::size_t>(keys[5] - '0')];
    if (panel == "Comparison" && !bench.comparison()) return true;
    if (keys[5] > '4') state.drawer_open = true;
    panel.empty() ? go_to_picture(state) : go_to_panel(panel, state);
  } else if (keys == "Ctrl+M") {
    go_to_panel("Machine", state);
  } else if (keys == "F11") {
    state.changes_screen = true;
  } else if (keys == "Ctrl+T") {
    state.drawer_open = true;
    go_to_panel("Study", state);
  } else if (keys == "Ctrl+R") {
    state.drawer_open = true;
    go_to_panel("Pattern", state);
  } else if (keys == "Ctrl+F") {
    state.drawer_open = true;
    go_to_panel("Follow", state);
  } else if (keys == "F4") {
    next_drawer(state);
  } else if (keys == "Ctrl+PageDown" || keys == "Ctrl+PageUp") {
    next_plan(keys == "Ctrl+PageDown" ? 1 : -1, bench, out);
  } else if (const std::string_view menu = menu_of(keys); !menu.empty()) {
    state.focus.menu = menu;
  } else {
    return false;
  }
  return true;
}

bool picture_key(std::string_view keys, const Workbench& bench, PanelState& state, Commands& out) {
  if (keys == "Enter") {
    pick_in_the_middle(bench, state, out);
  } else if (keys == "Ctrl+Shift+Left") {
    move_picture(-1.0, 0.0, bench, out);
  } else if (keys == "Ctrl+Shift+Right") {
    move_picture(1.0, 0.0, bench, out);
  } else if (keys == "Ctrl+Shift+Up") {
    move_picture(0.0, 1.0, bench, out);
  } else if (keys == "Ctrl+Shift+Down") {
    move_picture(0.0, -1.0, bench, out);
  } else {
    return false;
  }
  return true;
}

// With which one moves about in a panel and operates what stands there.
bool is_panel_key(std::string_view keys) {
  constexpr std::string_view all[] = {"Left",     "Right", "Up",    "Down",   "Home",       "End",        "PageUp",
                                      "PageDown", "Enter", "Space", "Escape", "Shift+Left", "Shift+Right"};
  return std::find(std::begin(all), std::end(all), keys) != std::end(all);
}

bool is_drawing_key(std::string_view keys) {
  return keys == "+" || keys == "-" || (is_panel_key(keys) && keys != "Space" && keys != "Escape");
}

// True: the panel that has the keyboard takes it.
bool panel_key(const std::string& keys, PanelState& state) {
  FocusState& focus = state.focus;
  if (focus.panel.empty()) return false;
  if (keys == "Escape") {
    go_to_picture(state);
    return true;
  }
  if (is_drawing(focus.panel) && !focus.controls) {
    if (!is_drawing_key(keys)) return false;
    focus.drawing_keys.push_back(keys);
    return true;
  }
  // After a click into a list, the wind can still be played.
  if (keys == "Space" && !ImGui::GetIO().NavVisible) return false;
  return is_panel_key(keys);
}

// It is stopped first.
bool is_searching(const Workbench& bench) {
  const Desk* desk = bench.active();
  return desk != nullptr && (desk->document->laying().busy || desk->advice->busy());
}

void go_to_answer(PanelState& state) {
  go_to_panel(cause_focus, state);
  state.wanted_tab = "Findings";  // where it stands
}

void take_key(const std::string& keys, const Workbench& bench, PanelState& state, Commands& out) {
  // The request for letters outlives the field by a frame.
  const bool typing = ImGui::GetIO().WantTextInput && ImGui::IsAnyItemActive();
  if (keys == "Enter" && !typing) state.focus.enter_held = true;
  if (popup_open()) {
    if (keys == "F5" && bench.question() == cmd::Question::records) out.push_back(cmd::reload_records());
    return;
  }
  if (keys == "Ctrl+Q") {
    state.wants_to_quit = true;
    return;
  }
  if (bench.showing()) return show_key(keys, state, out);
  if (window_key(keys, bench, state, out)) return;
  // While a field is typed into, keys are its own, but for files.
  const CommandRow* row = row_of_keys(keys);
  if (typing && (row == nullptr || row->also != Also::while_typing)) return;
  if (!typing && bench.lesson() && lesson_key(keys, bench, state, out)) return;
  if (!typing && keys == "Escape" && state.colours.share && !is_searching(bench)) {
    state.colours.stops = true;
    return;
  }
  if (!typing && panel_key(keys, state)) return;
  if (keys == "Y" && is_answered(bench)) return go_to_answer(state);
  if (!typing && picture_key(keys, bench, state, out)) return;
  if (row != nullptr) out.push_back(row->command);
}

}  // namespace

const std::vector<KeyHelp>& key_help() {
  static const std::vector<KeyHelp> all{
      {"Window", "Next panel", "F6", "The keyboard goes to the next panel, with Shift to the one before."},
      {"Window", "Plan, findings, view, turn", "Ctrl+1 to 4",
       "The keyboard goes there; again: to what is above a list."},
      {"Window", "Section, map, layers, curves", "Ctrl+5 to 8", "The same in the drawer; again: to the controls."},
      {"Window", "Machine", "Ctrl+M", "What the machine does where the scrubber is, and its warnings."},
      {"Window", "Pattern", "Ctrl+R", "Ribbons of a crossed wind, and settings without."},
      {"Window", "Follow", "Ctrl+F", "What was read on the spool that is being wound, beside the plan."},
      {"Window", "Study", "Ctrl+T", "A map or curve of what comes of other settings; again: to what is laid."},
      {"Window", "Why a finding is there", "Y again", "The keyboard goes to the answer, to set the plan so."},
      {"Window", "Comparison", "Ctrl+9", "The table of differences, while two builds are compared."},
      {"Window", "Picture", "Ctrl+0, Escape", "The keyboard goes back to the picture: keys are commands again."},
      {"Window", "Menus", "F10, Alt+letter", "Opens the first menu, or the one that begins with the letter."},
      {"Window", "Drawer", "F4", "Closed, as high as usual, high."},
      {"Window", "Full screen", "F11", "The window takes the whole screen, or goes back to its place."},
      {"Window", "Next plan", "Ctrl+PageDown", "Shows the next open plan; with PageUp the one before."},
      {"Window", "Leave", "Ctrl+Q", "Ends the program; unsaved work is kept."},
      {"In the picture", "Pick", "Enter", "Picks the turn in the middle of the picture."},
      {"In the picture", "Move", "Ctrl+Shift+arrows", "Moves what is seen; Ctrl+Alt+arrows turn it, + and - zoom."},
      {"While shown", "Pause", "Space", "Stops the picture, or lets it go on; Escape leaves it."},
      {"While shown", "Sizes", "I", "Tells the sizes of spool and fiber, or not."},
      {"In a lesson", "Answer", "1 to 9", "Takes the answer with that number; the first one counts."},
      {"In a lesson", "Next, back", "Enter, Backspace", "To the next step, and to the one before."},
      {"In a lesson", "Show again", "R", "Plays or points once more."},
      {"In a lesson", "Try", "Up, Down", "Changes the setting that the step lets you try; Ctrl+Z takes it back."},
      {"In a lesson", "Leave", "Ctrl+W", "Closes the lesson; Alt+L opens the list of lessons."},
      {"In a panel", "Move about", "arrows", "To the next control or line; Home, End, PageUp, PageDown in lists."},
      {"In a panel", "Press, choose, open", "Space, Enter",
       "Presses a button, opens a finding, types into a field."},
      {"In a panel", "Slide", "Space, then arrows", "Moves a slider; Enter types its value, Escape lets go."},
      {"In a field", "Take it", "Enter, Tab", "What is typed counts from here on; Tab goes to the next field."},
      {"In a field", "Give it up", "Escape", "The value is as it was."},
      {"In a field", "Step", "Up, Down", "A step more or less; with Shift ten steps, with Ctrl a tenth of one."},
      {"In the records", "Reload", "F5", "Reads them anew; what other windows add comes by itself."},
      {"In section or map", "Move, zoom", "arrows, + and -", "Moves and zooms the drawing; Home shows all of it."},
      {"In section or map", "Pick", "Enter", "Picks the turn at the cross."},
      {"In a study", "Move, set", "arrows, Enter", "To another build; Enter sets the plan to its settings."},
      {"In section or map", "Angle", "PageUp, PageDown", "Turns the section's plane by five degrees."},
  };
  return all;
}

void take_input(const WindowInput& input, const Workbench& bench, PanelState& state, Commands& out) {
  // What is typed belongs to the plan that is saved, shown, searched about, left or closed.
  const auto needs_plan = [](const std::string& keys) {
    if (keys == "Ctrl+Q" || keys.starts_with("Ctrl+Page")) return true;
    const CommandRow* row = row_of_keys(keys);
    return row != nullptr && row->also == Also::while_typing && row->group != "Help";
  };
  const bool any = std::any_of(input.keys.begin(), input.keys.end(), needs_plan);
  if (input.close || !input.dropped_files.empty() || any) send_typed(bench, state, out);
  if (input.close) state.wants_to_quit = true;
  for (const std::string& file : input.dropped_files) out.push_back(cmd::open(file));
  for (const std::string& keys : input.keys) take_key(keys, bench, state, out);
}

void prepare_keys(PanelState& state) {
  ImGuiIO& io = ImGui::GetIO();
  const FocusState& focus = state.focus;
  const bool in_panel = !focus.panel.empty() && (!is_drawing(focus.panel) || focus.controls);
  const bool on = in_panel || popup_open() || !focus.menu.empty();
  io.ConfigFlags &= ~ImGuiConfigFlags_NavEnableKeyboard;
  if (on) io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
  if (!ImGui::IsKeyDown(ImGui::GetKeyIndex(ImGuiKey_Enter))) state.focus.enter_held = false;
  // Enter presses what has the focus, as Space does.
  if (on && state.focus.enter_held) io.NavInputs[ImGuiNavInput_Activate] = 1.0F;
}

}  // namespace laywright
