#include "session/command_rows.h"

#include <algorithm>
#include <iterator>

#include <fmt/format.h>

namespace laywright {
namespace {

const CommandRow* pointer_to(CommandRows::const_iterator found) {
  return found == command_rows().end() ? nullptr : &*found;
}

}  // namespace

const CommandRows& command_rows() {
  static const CommandRows all = [] {
    CommandRows rows;
    for (const auto part : {file_rows, edit_rows, build_rows, scrub_rows, pick_rows, view_rows, camera_rows,
                            compare_rows, lesson_rows, help_rows}) {
      std::ranges::move(part(), std::back_inserter(rows));
    }
    return rows;
  }();
  return all;
}

const std::vector<std::string_view>& command_groups() {
  static const std::vector<std::string_view> all = [] {
    std::vector<std::string_view> groups;
    for (const CommandRow& row : command_rows()) {
      if (groups.empty() || groups.back() != row.group) groups.push_back(row.group);
    }
    return groups;
  }();
  return all;
}

const CommandRow* row_of(const Command& command) {
  return pointer_to(
      std::ranges::find(command_rows(), command.name(),
                        [](const CommandRow& row) -> const std::string& { return row.command.name(); }));
}

const CommandRow* row_of_keys(std::string_view keys) {
  if (keys.empty()) return nullptr;
  return pointer_to(std::ranges::find(command_rows(), keys, &CommandRow::keys));
}

std::string with_keys(std::string_view words, const Command& command) {
  const CommandRow* row = row_of(command);
  if (row == nullptr || row->keys.empty()) return std::string(words);
  const std::string_view stop = words.ends_with('.') ? "." : "";
  return fmt::format("{} ({}){}", words.substr(0, words.size() - stop.size()), row->keys, stop);
}

}  // namespace laywright
