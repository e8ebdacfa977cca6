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

[[noreturn]] void refuse(const CLI::Option& option, const std::string& why) {
  throw CLI::ValidationError(option.get_name(), why);
}

// ".pdf, .svg or .png"
std::string one_of(const Names& endings) {
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
  refuse(*output.option, fmt::format("{}: the file's ending must be {}, since that is what is written", file,
                                     one_of(output.endings)));
}

void check_apart(const WrittenFiles& output, const fs::path& file, const Names& inputs) {
  for (const std::string& input : inputs) {
    if (!same_file(file, input)) continue;
    const std::string as = file == fs::path(input) ? "" : fmt::format(" (as {})", input);
    refuse(*output.option, fmt::format("{} is what the command reads{}, and would be lost; choose another {}",
                                       file.string(), as, output.names ? "folder" : "name"));
  }
}

void check(const WrittenFiles& output, const Names& inputs) {
  if (output.option->count() == 0) return;
  for (const std::string& name : output.option->results()) {
    if (name.empty())
      refuse(*output.option, fmt::format("the name of a {} is missing", output.names ? "folder" : "file"));
    if (!output.names) {
      check_ending(output, name);
      check_apart(output, name, inputs);
      continue;
    }
    for (const std::string& file : output.names()) check_apart(output, fs::path(name) / file, inputs);
  }
}

}  // namespace

void guard_inputs(CLI::App& command, std::vector<const CLI::Option*> inputs, std::vector<WrittenFiles> outputs) {
  command.parse_complete_callback([inputs = std::move(inputs), outputs = std::move(outputs)] {
    Names read;
    for (const CLI::Option* input : inputs) {
      const Names& files = input->results();
      read.insert(read.end(), files.begin(), files.end());
    }
    for (const WrittenFiles& output : outputs) check(output, read);
  });
}

}  // namespace laywright
