// Asks a person on a terminal.
#pragma once

#include <functional>
#include <optional>
#include <string>

namespace laywright {

// Whether somebody can be asked: standard input and standard error are terminals.
[[nodiscard]] bool can_ask();

struct TerminalQuestion {
  std::string text;                                           // "Spool"
  std::string help;                                           // told at "?"
  std::string usual;                                          // taken for an empty answer; empty: there must be one
  std::function<std::string(const std::string&)> wrong = {};  // what is wrong with an answer; empty: nothing
  bool may_be_empty = false;
};

// Asks on standard error until an answer will do. None: the input is at its end.
[[nodiscard]] std::optional<std::string> ask(const TerminalQuestion& question);

// Anything but yes is no.
[[nodiscard]] bool ask_yes(const std::string& question);

}  // namespace laywright
