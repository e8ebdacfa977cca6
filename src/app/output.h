// Standard output and standard error, as every command uses them. Whatever a title, a file's name or an option holds, all
// that passes here is made visible (base/readable.h). Only a line feed passes: who puts a person's words into a line makes
// them visible() before.
#pragma once

#include <string>
#include <string_view>

#include "base/issue.h"

namespace laywright {

// Writes to standard error. That it could not be written, main() finds by ferror(stderr).
void tell(std::string_view text);

// Each issue on a line of standard error.
void print_issues(const Issues& issues);

// Writes to standard output; false, with an error printed, when it could not all be written.
[[nodiscard]] bool print(const std::string& text);

// The same for what is a file's content: into a file or a pipe it goes byte by byte.
[[nodiscard]] bool print_content(const std::string& text);

}  // namespace laywright
