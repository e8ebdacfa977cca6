#include "app/questions.h"

#include <unistd.h>

#include <iostream>

#include <fmt/format.h>

#include "app/output.h"
#include "base/readable.h"
#include "base/spelling.h"

namespace laywright {
namespace {

std::optional<std::string> line_after(const std::string& prompt) {
  tell(prompt);
  std::string line;
  if (!std::getline(std::cin, line)) {
    tell("\n");
    return std::nullopt;
  }
  return std::string(trimmed(line));
}

}  // namespace

bool can_ask() { return ::isatty(STDIN_FILENO) == 1 && ::isatty(STDERR_FILENO) == 1; }

std::optional<std::string> ask(const TerminalQuestion& question) {
  const std::string usual = question.usual.empty() ? "" : fmt::format(" [{}]", visible(question.usual));
  while (true) {
    std::optional<std::string> answer = line_after(fmt::format("{}{}: ", question.text, usual));
    if (!answer) return std::nullopt;
    if (*answer == "?") {
      tell(question.help);
      continue;
    }
    if (answer->empty() && (question.may_be_empty || !question.usual.empty())) return question.usual;
    const std::string wrong = question.wrong ? question.wrong(*answer) : "";
    if (!answer->empty() && wrong.empty()) return answer;
    tell(answer->empty() ? "  An answer is needed; ? tells more.\n" : fmt::format("  {}\n", visible(wrong)));
  }
}

bool ask_yes(const std::string& question) {
  const std::optional<std::string> answer = line_after(question + " [y/N]: ");
  return answer && (*answer == "y" || *answer == "Y" || *answer == "yes");
}

}  // namespace laywright
