#include "ui/layout.h"

#include <algorithm>
#include <charconv>
#include <string_view>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace laywright {
namespace {

constexpr std::string_view drawer_open = "drawer open", drawer_closed = "drawer closed", open_tabs = "tabs ";
constexpr float least_height = 1.0F, greatest_height = 500.0F;  // in letters

std::string_view without_spaces(std::string_view words) {
  const std::size_t first = words.find_first_not_of(' ');
  if (first == std::string_view::npos) return {};
  return words.substr(first, words.find_last_not_of(' ') - first + 1);
}

template <class Visit>
void for_each_part(std::string_view words, char between, const Visit& visit) {
  while (!words.empty()) {
    const std::size_t end = std::min(words.find(between), words.size());
    visit(without_spaces(words.substr(0, end)));
    words.remove_prefix(std::min(end + 1, words.size()));
  }
}

void take_part(PanelState& state, std::string_view part) {
  const bool open = part.starts_with(drawer_open);
  if (open || part.starts_with(drawer_closed)) {
    state.drawer_open = open;
    const std::size_t comma = part.find(", ");
    if (comma == std::string_view::npos) return;
    float height = 0.0F;
    std::from_chars(part.data() + comma + 2, part.data() + part.size(), height);
    if (height >= least_height && height <= greatest_height) state.drawer_height = height;
  } else if (part.starts_with(open_tabs)) {
    for_each_part(part.substr(open_tabs.size()), ',',
                  [&](std::string_view tab) { state.remembered_tabs.emplace_back(tab); });
  }
}

}  // namespace

std::string layout_words(const PanelState& state) {
  std::string words(state.drawer_open ? drawer_open : drawer_closed);
  if (state.drawer_height > 0.0F) words += fmt::format(", {:.1f} high", state.drawer_height);
  if (!state.focus.open_tabs.empty())
    words += fmt::format("; {}{}", open_tabs, fmt::join(state.focus.open_tabs, ", "));
  return words;
}

void take_layout(PanelState& state, const std::string& words) {
  for_each_part(words, ';', [&](std::string_view part) { take_part(state, part); });
}

bool was_in_front(PanelState& state, const std::string& tab) {
  const auto found = std::find(state.remembered_tabs.begin(), state.remembered_tabs.end(), tab);
  if (found == state.remembered_tabs.end()) return false;
  state.remembered_tabs.erase(found);
  return true;
}

}  // namespace laywright
