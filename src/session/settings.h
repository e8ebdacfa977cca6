// What the program remembers from one start to the next: a small TOML file, settings.toml in the config folder.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"
#include "scene/view.h"
#include "session/page_choices.h"

namespace laywright {

struct WindowPlace {
  int width = 1280, height = 800;  // of the window's inside, in units of the screen; 320 x 240 to 16384
  std::optional<int> x, y;         // of its upper left corner; none: where the system puts it
  bool maximized = false;

  [[nodiscard]] bool operator==(const WindowPlace&) const = default;
};

struct Settings {
  static constexpr std::size_t most_recent = 10;
  static constexpr double smallest_scale = 0.5, largest_scale = 4.0;
  static constexpr std::size_t longest_layout = 64 * 1024;  // bytes

  WindowPlace window;
  double scale = 1.0;  // of all that is written and drawn in the panels, times the screen's own
  bool motion = true;  // cameras fly to what they show; false: they are there at once
  // Of a view, what a person chooses once: colouring, outside, findings, dimensions, flanges, guide, units, theme and
  // projection. The rest is as by default.
  View view;
  std::vector<std::string> recent;  // files of plans, newest first, each once; absolute paths
  std::string records;              // where they are kept, if not as usual; never with a password
  PageChoices page;                 // of share pages
  std::string layout;               // of the panels, in the words of whoever draws them
};

[[nodiscard]] bool same_settings(const Settings& a, const Settings& b);

[[nodiscard]] std::string settings_text(const Settings& settings);

// What can be understood; the rest is as by default, each with a warning in `notes`. Whatever the text.
[[nodiscard]] Settings settings_from_text(std::string_view text, const std::string& file, Issues& notes);

struct LoadedSettings {
  Settings settings;
  Issues notes;              // warnings: what was not understood, or why the file was not read
  bool first_start = false;  // there is no such file yet
};
// An empty folder: first start, nothing remembered.
[[nodiscard]] LoadedSettings load_settings(const std::filesystem::path& config_folder);

// Errors: the file cannot be written. Nothing is done for an empty folder.
[[nodiscard]] Issues save_settings(const std::filesystem::path& config_folder, const Settings& settings);

// The list with this file at its top.
[[nodiscard]] std::vector<std::string> with_recent(std::vector<std::string> recent, const std::string& file);

}  // namespace laywright
