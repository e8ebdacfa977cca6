// Standard output and standard error, as every command uses them.
#pragma once

#include <string>

#include "base/issue.h"

namespace laywright {

// Each issue on a line of standard error.
void print_issues(const Issues& issues);

// Writes to standard output; false, with an error printed, when it could not all be written.
[[nodiscard]] bool print(const std::string& text);

}  // namespace laywright
