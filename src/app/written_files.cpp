#include "app/written_files.h"

#include <algorithm>
#include <filesystem>
#include <system_error>
#include <utility>

#include <fmt/format.h>

#include "base/same_file.h"
#include "base/spelling.h"

namespace laywright {
namespace {

namespace fs = std::filesystem;
using Names = std::vector<std::string>;

// ".pdf, .svg or .png"
std::string named(const Names& endings) {
  const std::string last = endings.back();
  if (endings.size() == 1) return last;
  return fmt::format("{} or {}", fmt::join(endings.begin(), endings.end() - 1, ", "), last);
}

bool is_stream(const fs::path& file) {
  std::error_code error;
  const fs::file_status status = fs::status(file, error);
  return fs::exists(status) && fs::is_other(status);
}

void check_ending(const WrittenFiles& output, const std::string& file) {
  const std::string ending = ending_of(file);
  if (std::find(output.endings.begin(), output.endings.end(), ending) != output.endings.end()) return;
  if (!output.ending_chooses && is_stream(file)) return;
  output.option.refuse(
      fmt::format("{}: the file's ending must be {}, since that is what is written", file, named(output.endings)));
}

// Whoever gives a file's name for several plans has not thought of a folder.
void check_folder(const WrittenFiles& output, const std::string& folder) {
  const std::string ending = ending_of(folder);
  std::error_code error;
  const bool a_file = std::find(output.endings.begin(), output.endings.end(), ending) != output.endings.end();
  if (!a_file || fs::is_directory(folder, error)) return;
  output.option.refuse(fmt::format("{} names one file; of several plans each gets its own: name a folder", folder));
}

void check_apart(const WrittenFiles& output, const fs::path& file, const Names& inputs) {
  for (const std::string& input : inputs) {
    if (!same_file(file, input)) continue;
    const std::string as = file == fs::path(input) ? "" : fmt::format(" (as {})", input);
    output.option.refuse(fmt::format("{} is what the command reads{}, and would be lost; choose another {}",
                                     file.string(), as,
                                     output.names && !output.names().empty() ? "folder" : "name"));
  }
}

void check(const WrittenFiles& output, const Names& inputs) {
  if (!output.option.given()) return;
  const Names in_folder = output.names ? output.names() : Names{};
  for (const std::string& name : output.option.results()) {
    if (name.empty())
      output.option.refuse(fmt::format("the name of a {} is missing", in_folder.empty() ? "file" : "folder"));
    if (in_folder.empty()) {
      check_ending(output, name);
      check_apart(output, name, inputs);
      continue;
    }
    check_folder(output, name);
    for (const std::string& file : in_folder) check_apart(output, fs::path(name) / file, inputs);
  }
}

}  // namespace

void guard_inputs(CommandLine command, std::vector<CommandOption> inputs, std::vector<WrittenFiles> outputs) {
  command.when_parsed([inputs = std::move(inputs), outputs = std::move(outputs)] {
    Names read;
    for (CommandOption input : inputs) {
      const Names& files = input.results();
      read.insert(read.end(), files.begin(), files.end());
    }
    for (const WrittenFiles& output : outputs) check(output, read);
  });
}

}  // namespace laywright
