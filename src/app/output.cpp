#include "app/output.h"

#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <system_error>

#include <fmt/format.h>

#include "base/readable.h"

namespace laywright {

void tell(std::string_view text) {
  const std::string shown = visible_lines(text);
  std::fwrite(shown.data(), 1, shown.size(), stderr);
}

void print_issues(const Issues& issues) {
  for (const Issue& issue : issues) tell(to_text(issue) + '\n');
}

namespace {

bool put(const std::string& shown) {
  errno = 0;
  const bool written = std::fwrite(shown.data(), 1, shown.size(), stdout) == shown.size();
  if (std::fflush(stdout) == 0 && written) return true;
  tell(fmt::format("error: cannot write to standard output ({})\n", std::generic_category().message(errno)));
  return false;
}

}  // namespace

bool print(const std::string& text) { return put(visible_lines(text)); }

bool print_content(const std::string& text) {
  return put(::isatty(STDOUT_FILENO) == 1 ? visible_lines(text) : text);
}

}  // namespace laywright
