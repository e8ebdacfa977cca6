// The reader of the settings file: whatever the file, settings in their ranges, and what is written reads back.
#include <cstdint>
#include <filesystem>
#include <string_view>

#include "fuzz/clean_issue.h"
#include "fuzz/require.h"
#include "session/settings.h"

using namespace laywright;
using fuzz::require;

namespace {

void require_in_range(const Settings& settings) {
  const WindowPlace& window = settings.window;
  require(window.width >= 320 && window.width <= 16384, "the window's width is in its range");
  require(window.height >= 240 && window.height <= 16384, "the window's height is in its range");
  require(settings.scale >= Settings::smallest_scale && settings.scale <= Settings::largest_scale,
          "the scale is in its range");
  require(settings.layout.size() <= Settings::longest_layout, "the layout is no longer than allowed");
  require(settings.recent.size() <= Settings::most_recent, "no more recent files than allowed");
  for (const std::string& file : settings.recent) {
    require(std::filesystem::path(file).is_absolute(), "recent files are absolute");
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  Issues notes;
  const Settings settings = settings_from_text(text, "settings.toml", notes);
  require(!has_error(notes), "settings that are not understood are no error");
  fuzz::require_clean(notes);
  require_in_range(settings);

  Issues none;
  const Settings again = settings_from_text(settings_text(settings), "settings.toml", none);
  require(none.empty(), "what is written is understood");
  require(same_settings(again, settings), "what is written reads back");
  require(again.recent == settings.recent && again.layout == settings.layout && again.window == settings.window,
          "texts read back to the byte");

  // A new plan comes to the top, and the list stays as it must be.
  Settings later = settings;
  later.recent = with_recent(settings.recent, settings.recent.empty() ? "/a" : settings.recent.back());
  require_in_range(later);
  return 0;
}
