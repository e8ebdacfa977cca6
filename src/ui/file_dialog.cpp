#include "ui/dialogs.h"

#include <algorithm>
#include <filesystem>

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_internal.h>  // ClearActiveID
#include <imgui_stdlib.h>

#include "order/order.h"
#include "paper/sheet_file.h"
#include "plan/plan_name.h"
#include "session/file_commands.h"
#include "session/follow_commands.h"
#include "session/order_commands.h"
#include "session/window_commands.h"
#include "ui/focus.h"
#include "ui/style.h"

namespace laywright {
namespace {

namespace fs = std::filesystem;

bool opens(FileUse use) {
  return use == FileUse::open_plan || use == FileUse::open_readings || use == FileUse::open_order;
}

// Of the files that are listed, where not all are.
std::string ending_listed(FileUse use) {
  if (use == FileUse::open_order) return std::string(order_ending);
  return use == FileUse::open_plan || use == FileUse::save_plan ? ".toml" : "";
}

// True if the file's ending says what is written.
bool fits(FileUse use, const fs::path& path) {
  if (use == FileUse::save_sheet) return sheet_format_of(path.string()).has_value();
  return use != FileUse::save_page || is_page_file(path.string());
}

// What stands in the dialog for each use.
struct Words {
  const char *title, *hint, *button;
};
Words words_for(FileUse use) {
  switch (use) {
    case FileUse::open_plan: return {"Open a plan", "name or path of a *.lay.toml file", "Open"};
    case FileUse::save_plan: return {"Save the plan as", "name or path of a *.lay.toml file", "Save"};
    case FileUse::save_sheet:
      return {"Save the set-up sheet as", "name or path of a .pdf, .svg or .png file", "Save"};
    case FileUse::save_page: return {"Save the share page as", "name or path of a .html file", "Save"};
    case FileUse::open_readings: return {"Open readings", "name or path of a .csv table", "Open"};
    case FileUse::save_readings: return {"Save the readings as", "name or path of a .csv table", "Save"};
    case FileUse::open_order: return {"Open an order", "name or path of a *.order.toml file", "Open"};
    case FileUse::write_order:
      return {"Write the order into a folder", "name or path of a folder; it is made where it is missing", "Write"};
  }
  return {"", "", ""};
}

std::string name_to_begin_with(const Workbench& bench, FileUse use) {
  const Desk* desk = bench.active();
  const fs::path file = desk != nullptr ? desk->document->path().filename() : fs::path();
  if (opens(use)) return "";
  if (use == FileUse::write_order) return fs::path(bench.order().file()).stem().stem().string();
  if (use == FileUse::save_plan) return file.empty() ? "plan.lay.toml" : file.string();
  const std::string ending = use == FileUse::save_sheet ? ".pdf" : use == FileUse::save_readings ? ".csv" : ".html";
  const char* const otherwise = use == FileUse::save_sheet ? "set-up-sheet" : "wind";
  return (file.empty() ? otherwise : file.stem().stem().string()) + ending;
}

void begin_where_it_makes_sense(const Workbench& bench, FileUse use, FileState& files) {
  std::error_code error;
  const Desk* desk = bench.active();
  fs::path file = desk != nullptr ? desk->document->path() : fs::path();
  const bool of_order = use == FileUse::open_order || use == FileUse::write_order;
  if (of_order && !bench.order().file().empty()) file = bench.order().file();
  if (file.empty() && !bench.settings().recent.empty()) file = bench.settings().recent.front();
  files.folder = file.empty() ? fs::current_path(error).string() : file.parent_path().string();
  files.name = name_to_begin_with(bench, use);
}

void go_to(const std::string& folder, FileState& files) {
  files.folder = folder;
  files.to_list = true;
}

// True: a file was opened by a double click or Enter.
bool entries(const FolderListing& listing, FileUse use, PanelState& state) {
  FileState& files = state.files;
  const fs::path folder = listing.folder;
  bool chosen = false;
  const bool enter = ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Enter), false);
  if (folder.has_parent_path() && folder != folder.parent_path()) {
    if (ImGui::Selectable("..  (up)")) go_to(folder.parent_path().string(), files);
    state.places.note_item("file up");
  }
  ImGuiListClipper clipper;
  clipper.Begin(static_cast<int>(listing.entries.size()));
  while (clipper.Step()) {
    for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i) {
      const FolderEntry& entry = listing.entries[static_cast<std::size_t>(i)];
      const std::string shown = entry.folder ? entry.name + "/" : entry.name;
      const bool pressed =
          ImGui::Selectable(shown.c_str(), entry.name == files.name, ImGuiSelectableFlags_AllowDoubleClick);
      state.places.note_item("file " + entry.name);
      if (!pressed) continue;
      if (entry.folder) {
        go_to((folder / entry.name).string(), files);
      } else {
        files.name = entry.name;
        chosen = enter || ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left);
      }
    }
  }
  if (listing.entries.empty() && listing.trouble.empty()) {
    ImGui::TextDisabled(listing.ending.empty()       ? "The folder is empty."
                        : use == FileUse::open_order ? "No order here (*.order.toml)."
                                                     : "No lay plan here (*.toml).");
  }
  return chosen;
}

bool list(FileUse use, PanelState& state) {
  FileState& files = state.files;
  ImGui::BeginChild("entries", {0.0F, -em(5.6F)}, true);
  const std::string ending = files.all_files ? "" : ending_listed(use);
  const FolderListing* listing = files.list.of(files.folder, ending, state.wake);
  bool chosen = false;
  if (listing == nullptr) {
    ImGui::TextDisabled("Reading the folder...");
  } else {
    if (files.to_list) take_keys_now();
    files.to_list = false;
    if (!listing->trouble.empty()) {
      ImGui::TextWrapped("This folder cannot be read (%s). Go up, or type another one above.",
                         listing->trouble.c_str());
    }
    chosen = entries(*listing, use, state);
  }
  // Tab leads on to the name, Down from the name back.
  files.to_name |= ImGui::IsWindowFocused() && ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Tab), false);
  ImGui::EndChild();
  return chosen;
}

// True: Enter was pressed in it.
bool name_field(const char* hint, PanelState& state) {
  FileState& files = state.files;
  if (ImGui::IsWindowAppearing() || files.to_name) ImGui::SetKeyboardFocusHere();
  files.to_name = false;
  ImGui::SetNextItemWidth(-1.0F);
  const bool enter = ImGui::InputTextWithHint("##name", hint, &files.name, ImGuiInputTextFlags_EnterReturnsTrue);
  state.places.note_item("file name");
  if (ImGui::IsItemActive() && ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_DownArrow), false)) {
    ImGui::ClearActiveID();
    files.to_list = true;
  }
  return enter;
}

fs::file_type what_is_there(const fs::path& path, FileState& files) {
  if (files.looked_for == path.string()) return files.is_there;
  std::error_code error;
  files.looked_for = path.string();
  files.is_there = fs::status(path, error).type();
  return files.is_there;
}

bool is_there(const fs::path& path, FileState& files) {
  const fs::file_type type = what_is_there(path, files);
  return type != fs::file_type::not_found && type != fs::file_type::none;
}

// A set of files goes into a folder.
bool is_taken(FileUse use, const fs::path& path, FileState& files) {
  return use == FileUse::write_order && is_there(path, files) &&
         what_is_there(path, files) != fs::file_type::directory;
}

// What is to be known of the name before it is taken.
const char* remark_on(const Workbench& bench, FileUse use, const fs::path& path, FileState& files) {
  if (opens(use)) return " ";
  if (use == FileUse::write_order) {
    if (is_taken(use, path, files)) return "There is a file of that name, and no folder: choose another one.";
    return is_there(path, files) ? "The folder is there already; files of the same names in it will be replaced."
                                 : "All files or none: if one cannot be written, nothing is.";
  }
  if (files.name.empty()) return " ";
  if (!fits(use, path)) {
    return use == FileUse::save_page ? "End the name with .html."
                                     : "End the name with .pdf for both pages, with .svg or .png for one.";
  }
  const bool own =
      use == FileUse::save_plan && bench.active() != nullptr && path == bench.active()->document->path();
  if (!own && is_there(path, files)) return "The file is there already; it will be replaced.";
  return use == FileUse::save_plan && path.filename() != fs::path(files.name).filename()
             ? "It gets the ending .lay.toml."
             : " ";
}

// What stands beside the buttons.
void options(FileUse use, const fs::path& path, PanelState& state) {
  if (!ending_listed(use).empty()) {
    ImGui::Checkbox("All files", &state.files.all_files);
    return;
  }
  if (use != FileUse::save_sheet) return;
  if (sheet_format_of(path.string()).value_or(SheetFormat::pdf) == SheetFormat::pdf) return;
  ImGui::SameLine(0.0F, em(1.5F));
  ImGui::RadioButton("Page 1", &state.sheet.page, 1);
  ImGui::SameLine();
  ImGui::RadioButton("Page 2", &state.sheet.page, 2);
  state.places.note_item("file page 2");
}

Command command_for(FileUse use, const fs::path& path, const PanelState& state) {
  switch (use) {
    case FileUse::open_plan: break;
    case FileUse::save_plan: return cmd::save_as(path.string());
    case FileUse::save_sheet: return cmd::save_sheet(path.string(), state.sheet.pages.drawings, state.sheet.page);
    case FileUse::save_page: return cmd::save_page(path.string());
    case FileUse::open_readings: return cmd::open_readings(path.string());
    case FileUse::save_readings: return cmd::save_readings(path.string());
    case FileUse::open_order: return cmd::open_order(path.string());
    case FileUse::write_order: return cmd::write_order(path.string());
  }
  return cmd::open(path.string());
}

// What is saved of a build, or an order, is looked at again; all else is over.
Command command_to_give_up(const Workbench& bench, FileUse use) {
  const bool of_order = use == FileUse::write_order || use == FileUse::open_order;
  if (of_order && !bench.order().file().empty()) return cmd::ask(cmd::Question::order);
  if (use == FileUse::save_page) return cmd::ask(cmd::Question::share_page);
  return use == FileUse::save_sheet ? Command{cmd::ask(cmd::Question::setup_sheet)} : Command{cmd::answered()};
}

}  // namespace

void file_dialog(const Workbench& bench, FileUse use, PanelState& state, Commands& out) {
  const auto [title, hint, button] = words_for(use);
  FileState& files = state.files;
  if (!ImGui::IsPopupOpen(title)) {
    begin_where_it_makes_sense(bench, use, files);
    files.looked_for.clear();
    ImGui::OpenPopup(title);
  }
  const ImVec2 window = ImGui::GetIO().DisplaySize;
  ImGui::SetNextWindowPos({0.5F * window.x, 0.5F * window.y}, ImGuiCond_Always, {0.5F, 0.5F});
  ImGui::SetNextWindowSize({std::min(em(38.0F), 0.94F * window.x), std::min(em(32.0F), 0.9F * window.y)});
  if (!ImGui::BeginPopupModal(title, nullptr, ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoMove)) return;
  ImGui::SetNextItemWidth(-1.0F);
  ImGui::InputTextWithHint("##folder", "folder", &files.folder);
  state.places.note_item("file folder");
  bool done = list(use, state);
  done |= name_field(hint, state);
  // A whole path that was typed stands for itself.
  const fs::path typed = files.name.empty() ? fs::path(files.folder) : fs::path(files.folder) / files.name;
  const fs::path path = use == FileUse::save_plan ? with_plan_ending(typed) : typed;
  ImGui::TextDisabled("%s", remark_on(bench, use, path, files));
  const bool named = !files.name.empty() || use == FileUse::write_order;
  const bool usable = named && fits(use, path) && !is_taken(use, path, files);
  ImGui::BeginDisabled(!usable);
  done |= ImGui::Button(button);
  ImGui::EndDisabled();
  state.places.note_item("file done");
  ImGui::SameLine();
  const bool cancelled = ImGui::Button("Cancel") || ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape));
  ImGui::SameLine();
  options(use, path, state);
  const bool chosen = done && usable && !cancelled;
  files.to_name |= done && !usable;  // Enter has let go of the name, which is to be mended
  if (chosen) out.push_back(command_for(use, path, state));
  if (cancelled) out.push_back(command_to_give_up(bench, use));
  if (chosen || cancelled) {
    files.list.close();
    ImGui::CloseCurrentPopup();
  }
  ImGui::EndPopup();
}

}  // namespace laywright
