#include "ui/file_dialog.h"

#include <algorithm>
#include <filesystem>

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include "ui/style.h"

namespace laywright {
namespace {

namespace fs = std::filesystem;

struct Entry {
  fs::path path;
  bool folder = false;
};

constexpr std::size_t most_entries = 5000;

// Folders first, then plans (or all files), by name. Empty where the folder cannot be read.
std::vector<Entry> entries_of(const fs::path& folder, bool all_files) {
  std::vector<Entry> entries;
  std::error_code error;
  for (fs::directory_iterator at(folder, error), end; !error && at != end && entries.size() < most_entries;
       at.increment(error)) {
    const std::string name = at->path().filename().string();
    if (name.starts_with('.')) continue;
    std::error_code unknown;
    const bool is_folder = at->is_directory(unknown);
    if (is_folder || all_files || name.ends_with(".toml")) entries.push_back({at->path(), is_folder});
  }
  std::sort(entries.begin(), entries.end(), [](const Entry& a, const Entry& b) {
    return a.folder != b.folder ? a.folder : a.path.filename() < b.path.filename();
  });
  return entries;
}

void begin_where_it_makes_sense(const Workbench& bench, bool saving, FileState& files) {
  std::error_code error;
  const Desk* desk = bench.active();
  fs::path file = desk != nullptr ? desk->document->path() : fs::path();
  if (file.empty() && !bench.settings().recent.empty()) file = bench.settings().recent.front();
  files.folder = file.empty() ? fs::current_path(error).string() : file.parent_path().string();
  files.name = saving && desk != nullptr ? desk->document->path().filename().string() : "";
  if (saving && files.name.empty()) files.name = "plan.lay.toml";
}

// Gives the name of a file that was chosen twice.
bool list(FileState& files) {
  bool chosen = false;
  ImGui::BeginChild("entries", {0.0F, -em(5.6F)}, true);
  const fs::path folder = files.folder;
  if (folder.has_parent_path() && folder != folder.parent_path() && ImGui::Selectable("..  (up)")) {
    files.folder = folder.parent_path().string();
  }
  for (const Entry& entry : entries_of(folder, files.all_files)) {
    const std::string name = entry.path.filename().string();
    const std::string shown = entry.folder ? name + "/" : name;
    if (!ImGui::Selectable(shown.c_str(), name == files.name, ImGuiSelectableFlags_AllowDoubleClick)) continue;
    if (entry.folder) {
      files.folder = entry.path.string();
    } else {
      files.name = name;
      chosen = ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left);
    }
  }
  ImGui::EndChild();
  return chosen;
}

}  // namespace

void file_dialog(const Workbench& bench, bool saving, PanelState& state, Commands& out) {
  const char* title = saving ? "Save the plan as" : "Open a plan";
  FileState& files = state.files;
  if (!ImGui::IsPopupOpen(title)) {
    begin_where_it_makes_sense(bench, saving, files);
    ImGui::OpenPopup(title);
  }
  const ImVec2 window = ImGui::GetIO().DisplaySize;
  ImGui::SetNextWindowPos({0.5F * window.x, 0.5F * window.y}, ImGuiCond_Always, {0.5F, 0.5F});
  ImGui::SetNextWindowSize({std::min(em(38.0F), 0.94F * window.x), std::min(em(32.0F), 0.9F * window.y)});
  if (!ImGui::BeginPopupModal(title, nullptr, ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoMove)) return;
  ImGui::SetNextItemWidth(-1.0F);
  ImGui::InputTextWithHint("##folder", "folder", &files.folder);
  bool done = list(files);
  if (ImGui::IsWindowAppearing()) ImGui::SetKeyboardFocusHere();
  ImGui::SetNextItemWidth(-1.0F);
  done |= ImGui::InputTextWithHint("##name", "name or path of a *.lay.toml file", &files.name,
                                   ImGuiInputTextFlags_EnterReturnsTrue);
  state.places.note_item("file name");
  const fs::path path = fs::path(files.folder) / files.name;  // a whole path that was typed stands for itself
  std::error_code error;
  const bool replaces = saving && !files.name.empty() && fs::exists(path, error) &&
                        (bench.active() == nullptr || path != bench.active()->document->path());
  ImGui::TextDisabled("%s", replaces ? "The file is there already; it will be replaced." : " ");
  ImGui::BeginDisabled(files.name.empty());
  done |= ImGui::Button(saving ? "Save" : "Open");
  ImGui::EndDisabled();
  ImGui::SameLine();
  const bool cancelled = ImGui::Button("Cancel") || ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape));
  ImGui::SameLine();
  ImGui::Checkbox("All files", &files.all_files);
  if (done && !files.name.empty() && !cancelled) {
    out.push_back(saving ? Command{cmd::SaveAs{path.string()}} : Command{cmd::Open{path.string()}});
    ImGui::CloseCurrentPopup();
  } else if (cancelled) {
    out.push_back(cmd::Answered{});
    ImGui::CloseCurrentPopup();
  }
  ImGui::EndPopup();
}

}  // namespace laywright
