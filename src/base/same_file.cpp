#include "base/same_file.h"

#include <system_error>

namespace laywright {

bool same_file(const std::filesystem::path& one, const std::filesystem::path& other) {
  std::error_code error;
  return std::filesystem::equivalent(one, other, error) && !error;
}

}  // namespace laywright
