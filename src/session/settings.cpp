#include "session/settings.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <utility>

#include <fmt/format.h>

#include "base/atomic_file.h"
#include "base/read_file.h"
#include "base/readable.h"
#include "plan/document.h"
#include "plan/entry_issues.h"
#include "plan/plan_text.h"
#include "session/folders.h"

namespace laywright {
namespace {

using Words = std::vector<std::string_view>;

// In the order of the enumerations.
const Words& colourings() {
  static const Words words(colouring_names.begin(), colouring_names.end());
  return words;
}
const Words& outsides() {
  static const Words words = {"gone", "faded"};
  return words;
}
const Words& unit_systems() {
  static const Words words = {"metric", "inch"};
  return words;
}
const Words& themes() {
  static const Words words = {"light", "dark"};
  return words;
}
const Words& projections() {
  static const Words words = {"perspective", "parallel"};
  return words;
}

template <class Enum>
std::string_view word(const Words& words, Enum value) {
  return words[static_cast<std::size_t>(value)];
}

// Reads the tables of a settings document; what does not fit stays as it is and is noted.
class SettingsReader {
 public:
  SettingsReader(std::string file, Issues& notes) : file_(std::move(file)), notes_(notes) {}

  void note(const Entry& entry, std::string what) {
    Issue issue = issue_at(file_, entry, entry.key, std::move(what));
    issue.severity = Severity::warning;
    if (notes_.size() < most_notes) notes_.push_back(std::move(issue));
  }
  void whole(const Entry& entry, int low, int high, int& value) {
    const double number = entry.number;
    if (entry.kind != Entry::Kind::whole || number < low || number > high) {
      return note(entry, fmt::format("is ignored: it must be a whole number from {} to {}", low, high));
    }
    value = static_cast<int>(number);
  }
  void whole(const Entry& entry, int low, int high, std::optional<int>& value) {
    int number = low - 1;
    whole(entry, low, high, number);
    if (number >= low) value = number;
  }
  void truth(const Entry& entry, bool& value) {
    if (entry.kind != Entry::Kind::truth) return note(entry, "is ignored: it must be true or false");
    value = entry.text == "true";
  }
  template <class Enum>
  void choice(const Entry& entry, const Words& words, Enum& value) {
    const auto found = std::find(words.begin(), words.end(), entry.text);
    if (entry.kind != Entry::Kind::text || found == words.end()) {
      return note(entry, fmt::format("is ignored: it must be one of {}", fmt::join(words, ", ")));
    }
    value = static_cast<Enum>(found - words.begin());
  }

 private:
  static constexpr std::size_t most_notes = 20;

  std::string file_;
  Issues& notes_;
};

constexpr std::string_view the_settings = "the settings of this program";
constexpr const char* not_known = "is ignored: this program does not know it";

void read_window(const Entry& table, WindowPlace& window, SettingsReader& reader) {
  constexpr int farthest = 100'000;
  for (const Entry& entry : table.children) {
    if (entry.key == "width")
      reader.whole(entry, 320, 16384, window.width);
    else if (entry.key == "height")
      reader.whole(entry, 240, 16384, window.height);
    else if (entry.key == "x")
      reader.whole(entry, -farthest, farthest, window.x);
    else if (entry.key == "y")
      reader.whole(entry, -farthest, farthest, window.y);
    else if (entry.key == "maximized")
      reader.truth(entry, window.maximized);
    else
      reader.note(entry, not_known);
  }
  if (window.x.has_value() != window.y.has_value()) {  // half a place is none
    reader.note(table, "has half a place, which is ignored: it must have both, x and y, or neither");
    window.x.reset();
    window.y.reset();
  }
}

void read_view(const Entry& table, View& view, SettingsReader& reader) {
  for (const Entry& entry : table.children) {
    const auto* const found = std::find_if(view_switches.begin(), view_switches.end(),
                                           [&](const ViewSwitch& s) { return s.name == entry.key; });
    if (found != view_switches.end())
      reader.truth(entry, view.*found->shown);
    else if (entry.key == "colouring")
      reader.choice(entry, colourings(), view.colouring);
    else if (entry.key == "outside")
      reader.choice(entry, outsides(), view.outside);
    else if (entry.key == "units")
      reader.choice(entry, unit_systems(), view.units);
    else if (entry.key == "theme")
      reader.choice(entry, themes(), view.theme);
    else if (entry.key == "projection")
      reader.choice(entry, projections(), view.camera.projection);
    else
      reader.note(entry, not_known);
  }
}

void read_page(const Entry& table, PageChoices& page, SettingsReader& reader) {
  const auto text = [&](const Entry& entry, std::size_t most, std::string& value) {
    const bool fits = entry.kind == Entry::Kind::text && character_count(entry.text) <= most;
    if (!fits) return reader.note(entry, fmt::format("is ignored: it must be a text of up to {} characters", most));
    value = entry.text;
  };
  constexpr std::size_t longest_path = 4096;
  for (const Entry& entry : table.children) {
    if (entry.key == "for_customer")
      reader.truth(entry, page.for_customer);
    else if (entry.key == "sender")
      text(entry, longest_name_text, page.letter.sender);
    else if (entry.key == "logo")
      text(entry, longest_path, page.logo);
    else if (entry.key == "verdict")
      reader.truth(entry, page.letter.verdict);
    else
      reader.note(entry, not_known);
  }
}

void read_recent(const Entry& list, std::vector<std::string>& recent, SettingsReader& reader) {
  if (list.kind != Entry::Kind::list) return reader.note(list, "is ignored: it must be a list of files");
  for (const Entry& entry : list.children) {
    const bool fits = entry.kind == Entry::Kind::text && std::filesystem::path(entry.text).is_absolute();
    if (!fits) reader.note(entry, "has an item that is ignored: it is no absolute path of a file");
    const bool there = std::find(recent.begin(), recent.end(), entry.text) != recent.end();
    if (fits && !there && recent.size() < Settings::most_recent) recent.push_back(entry.text);
  }
}

void read_scale(const Entry& entry, double& scale, SettingsReader& reader) {
  const bool is_number = entry.kind == Entry::Kind::number || entry.kind == Entry::Kind::whole;
  if (is_number && entry.number >= Settings::smallest_scale && entry.number <= Settings::largest_scale) {
    scale = entry.number;
  } else {
    reader.note(entry, fmt::format("is ignored: it must be a number from {} to {}", Settings::smallest_scale,
                                   Settings::largest_scale));
  }
}

void read_top(const Entry& entry, Settings& settings, SettingsReader& reader) {
  const bool is_table = entry.kind == Entry::Kind::table;
  if (entry.key == "format") return;
  if (entry.key == "recent") return read_recent(entry, settings.recent, reader);
  if (entry.key == "scale") return read_scale(entry, settings.scale, reader);
  if (entry.key == "motion") return reader.truth(entry, settings.motion);
  if (entry.key == "window" && is_table) return read_window(entry, settings.window, reader);
  if (entry.key == "view" && is_table) return read_view(entry, settings.view, reader);
  if (entry.key == "page" && is_table) return read_page(entry, settings.page, reader);
  if (entry.key == "layout" && entry.kind == Entry::Kind::text && entry.text.size() <= Settings::longest_layout) {
    settings.layout = entry.text;
    return;
  }
  if (entry.key == "records" && entry.kind == Entry::Kind::text) {
    settings.records = entry.text;
    return;
  }
  reader.note(entry, not_known);
}

Issue warning(const std::string& file, std::string what) {
  Issue issue;
  issue.severity = Severity::warning;
  issue.file = file;
  issue.what = std::move(what);
  return issue;
}

std::filesystem::path file_in(const std::filesystem::path& folder) { return folder / "settings.toml"; }

}  // namespace

std::string settings_text(const Settings& settings) {
  const WindowPlace& window = settings.window;
  const View& view = settings.view;
  std::string text = "# Written by the program when it ends; what it does not understand, it ignores.\n";
  text += fmt::format("format = \"laywright-settings 1\"\nscale = {}\nmotion = {}\nrecent = [", settings.scale,
                      settings.motion);
  for (const std::string& file : settings.recent) text += fmt::format("\n  {},", toml_text(file));
  text += settings.recent.empty() ? "]\n" : "\n]\n";
  if (!settings.records.empty()) text += fmt::format("records = {}\n", toml_text(valid_utf8(settings.records)));
  if (!settings.layout.empty() && settings.layout.size() <= Settings::longest_layout) {
    text += fmt::format("layout = {}\n", toml_text(valid_utf8(settings.layout)));
  }
  text += fmt::format("\n[window]\nwidth = {}\nheight = {}\n", window.width, window.height);
  if (window.x && window.y) text += fmt::format("x = {}\ny = {}\n", *window.x, *window.y);
  text += fmt::format("maximized = {}\n", window.maximized);
  text += fmt::format("\n[view]\ncolouring = \"{}\"\noutside = \"{}\"\nunits = \"{}\"\ntheme = \"{}\"\n",
                      word(colourings(), view.colouring), word(outsides(), view.outside),
                      word(unit_systems(), view.units), word(themes(), view.theme));
  text += fmt::format("projection = \"{}\"\n", word(projections(), view.camera.projection));
  for (const ViewSwitch& s : view_switches) text += fmt::format("{} = {}\n", s.name, view.*s.shown);
  const PageChoices& page = settings.page;
  text +=
      fmt::format("\n[page]\nfor_customer = {}\nsender = {}\nlogo = {}\nverdict = {}\n", page.for_customer,
                  toml_text(valid_utf8(page.letter.sender)), toml_text(valid_utf8(page.logo)), page.letter.verdict);
  return text;
}

bool same_settings(const Settings& a, const Settings& b) { return settings_text(a) == settings_text(b); }

Settings settings_from_text(std::string_view text, const std::string& file, Issues& notes) {
  Settings settings;
  const Result<Entry> document = read_document(text, file, the_settings);
  if (!document) {
    for (Issue issue : document.issues()) {
      issue.severity = Severity::warning;
      issue.what = fmt::format("is ignored, the program begins with its usual settings: {}", issue.what);
      notes.push_back(std::move(issue));
    }
    return settings;
  }
  SettingsReader reader(file, notes);
  for (const Entry& entry : document.value().children) read_top(entry, settings, reader);
  return settings;
}

LoadedSettings load_settings(const std::filesystem::path& config_folder) {
  LoadedSettings loaded;
  const std::filesystem::path file = file_in(config_folder);
  std::error_code error;
  if (config_folder.empty() || !std::filesystem::exists(file, error)) {
    loaded.first_start = true;
    return loaded;
  }
  const Result<std::string> text = read_file(file, the_settings, largest_plan_bytes);
  if (!text) {
    loaded.notes.push_back(warning(file.string(), fmt::format("is ignored: it {}", text.issues().front().what)));
    return loaded;
  }
  loaded.settings = settings_from_text(text.value(), file.string(), loaded.notes);
  return loaded;
}

Issues save_settings(const std::filesystem::path& config_folder, const Settings& settings) {
  if (config_folder.empty()) return {};
  if (!make_private_folder(config_folder)) {
    Issue issue;
    issue.file = config_folder.string();
    issue.what = "cannot be made; window and view are not remembered";
    return {issue};
  }
  return write_file_atomically(file_in(config_folder), settings_text(settings));
}

std::vector<std::string> with_recent(std::vector<std::string> recent, const std::string& file) {
  recent.erase(std::remove(recent.begin(), recent.end(), file), recent.end());
  recent.insert(recent.begin(), file);
  if (recent.size() > Settings::most_recent) recent.resize(Settings::most_recent);
  return recent;
}

}  // namespace laywright
