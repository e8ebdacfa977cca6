#include "plan/plan_name.h"

#include "base/spelling.h"

namespace laywright {

std::filesystem::path with_plan_ending(const std::filesystem::path& file) {
  const std::string ending = ending_of(file);
  if (!file.has_filename() || ending == ".toml") return file;
  return file.string() + (ending == ".lay" ? ".toml" : plan_ending);
}

std::string plan_name(const std::filesystem::path& file) {
  std::filesystem::path name = file.filename();
  for (const char* ending : {".toml", ".lay"}) {
    if (ending_of(name) == ending) name = name.stem();
  }
  return name.string();
}

}  // namespace laywright
