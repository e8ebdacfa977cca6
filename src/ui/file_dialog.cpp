#include "ui/file_dialog.h"

#include <algorithm>
#include <filesystem>

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_internal.h>  // ClearActiveID
#include <imgui_stdlib.h>

#include "ui/focus.h"
#include "ui/style.h"

namespace laywright {
namespace {

namespace fs = std::filesystem;

void begin_where_it_makes_sense(const Workbench& bench, bool saving, FileState& files) {
  std::error_code error;
  const Desk* desk = bench.active();
  fs::path file = desk != nullptr ? desk->document->path() : fs::path();
  if (file.empty() && !bench.settings().recent.empty()) file = bench.settings().recent.front();
  files.folder = file.empty() ? fs::current_path(error).string() : file.parent_path().string();
  files.name = saving && desk != nullptr ? desk->document->path().filename().string() : "";
  if (saving && files.name.empty()) files.name = "plan.lay.toml";
}

void go_to(const std::string& folder, FileState& files) {
  files.folder = folder;
  files.to_list = true;
}

// True: a file was opened by a double click or Enter.
bool entries(const FolderListing& listing, PanelState& state) {
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
    ImGui::TextDisabled(listing.all_files ? "The folder is empty." : "No lay plan here (*.toml).");
  }
  return chosen;
}

bool list(PanelState& state) {
  FileState& files = state.files;
  ImGui::BeginChild("entries", {0.0F, -em(5.6F)}, true);
  const FolderListing* listing = files.list.of(files.folder, files.all_files, state.wake);
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
    chosen = entries(*listing, state);
  }
  // Tab leads on to the name, Down from the name back.
  files.to_name = ImGui::IsWindowFocused() && ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Tab), false);
  ImGui::EndChild();
  return chosen;
}

// True: Enter was pressed in it.
bool name_field(PanelState& state) {
  FileState& files = state.files;
  if (ImGui::IsWindowAppearing() || files.to_name) ImGui::SetKeyboardFocusHere();
  ImGui::SetNextItemWidth(-1.0F);
  const bool enter = ImGui::InputTextWithHint("##name", "name or path of a *.lay.toml file", &files.name,
                                              ImGuiInputTextFlags_EnterReturnsTrue);
  state.places.note_item("file name");
  if (ImGui::IsItemActive() && ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_DownArrow), false)) {
    ImGui::ClearActiveID();
    files.to_list = true;
  }
  return enter;
}

bool is_there(const fs::path& path, FileState& files) {
  if (files.looked_for == path.string()) return files.is_there;
  std::error_code error;
  files.looked_for = path.string();
  files.is_there = fs::exists(path, error);
  return files.is_there;
}

}  // namespace

void file_dialog(const Workbench& bench, bool saving, PanelState& state, Commands& out) {
  const char* title = saving ? "Save the plan as" : "Open a plan";
  FileState& files = state.files;
  if (!ImGui::IsPopupOpen(title)) {
    begin_where_it_makes_sense(bench, saving, files);
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
  bool done = list(state);
  done |= name_field(state);
  const fs::path path = fs::path(files.folder) / files.name;  // a whole path that was typed stands for itself
  const bool replaces = saving && !files.name.empty() && is_there(path, files) &&
                        (bench.active() == nullptr || path != bench.active()->document->path());
  ImGui::TextDisabled("%s", replaces ? "The file is there already; it will be replaced." : " ");
  ImGui::BeginDisabled(files.name.empty());
  done |= ImGui::Button(saving ? "Save" : "Open");
  ImGui::EndDisabled();
  ImGui::SameLine();
  const bool cancelled = ImGui::Button("Cancel") || ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape));
  ImGui::SameLine();
  ImGui::Checkbox("All files", &files.all_files);
  const bool chosen = done && !files.name.empty() && !cancelled;
  if (chosen) out.push_back(saving ? Command{cmd::SaveAs{path.string()}} : Command{cmd::Open{path.string()}});
  if (cancelled) out.push_back(cmd::Answered{});
  if (chosen || cancelled) {
    files.list.close();
    ImGui::CloseCurrentPopup();
  }
  ImGui::EndPopup();
}

}  // namespace laywright
