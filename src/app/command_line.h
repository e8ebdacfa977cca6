// Commands and options of the command line. The parser's own header costs the compiler several seconds in each file that
// includes it: only command_line.cpp and main.cpp do. Both types are handles, copied like pointers; what they stand for
// lives as long as the program's parser.
#pragma once

#include <functional>
#include <string>
#include <vector>

namespace CLI {
class App;
class Option;
}  // namespace CLI

namespace laywright {

// Why what was given is refused; empty: it is not.
using OptionCheck = std::function<std::string(const std::string& text)>;

// Refuses all other words, and names these.
[[nodiscard]] OptionCheck one_of(std::vector<std::string> words);

// An option, a flag or a word of a command. What tells of it gives it back, so that one can follow another.
class CommandOption {
 public:
  CommandOption() = default;  // none: nothing may be asked of it
  explicit CommandOption(CLI::Option* option) : option_(option) {}

  CommandOption type_name(const std::string& name) const;  // what the help has for its value; may be empty
  CommandOption group(const std::string& heading) const;   // of the help
  CommandOption envname(const std::string& name) const;    // of a variable that holds it where it is not given
  CommandOption required(bool is = true) const;
  CommandOption capture_default_str() const;  // the help tells what it is now
  CommandOption check(OptionCheck check) const;
  CommandOption one_at_a_time() const;  // of several values: each has the option before it
  CommandOption needs(CommandOption other) const;
  CommandOption needs(const std::string& other) const;
  CommandOption excludes(CommandOption other) const;
  CommandOption excludes(const std::string& other) const;

  // Once parsed.
  [[nodiscard]] bool given() const;
  [[nodiscard]] const std::vector<std::string>& results() const;
  [[nodiscard]] std::string name() const;  // "--output"
  // Ends parsing with this, as a wrong command line.
  [[noreturn]] void refuse(const std::string& why) const;

 private:
  friend class CommandLine;
  CLI::Option* option_ = nullptr;
};

// The program's or a command's.
class CommandLine {
 public:
  explicit CommandLine(CLI::App& parser) : parser_(&parser) {}

  [[nodiscard]] CommandLine add_command(const std::string& name, const std::string& help) const;
  // `value` is written when the command line is parsed, and must live so long. Of the types at the end of
  // command_line.cpp.
  template <class T>
  CommandOption add_option(const std::string& name, T& value, const std::string& help) const;
  CommandOption add_option_function(const std::string& name, const std::function<void(const std::string&)>& take,
                                    const std::string& help) const;
  CommandOption add_flag(const std::string& name, bool& value, const std::string& help) const;
  [[nodiscard]] CommandOption option(const std::string& name) const;  // that was added
  [[nodiscard]] std::vector<CommandOption> options() const;

  void footer(const std::string& text) const;         // of the help
  void require_command() const;                       // one of its own
  void callback(std::function<void()> run) const;     // once all is parsed
  void when_parsed(std::function<void()> run) const;  // before its callback: may refuse

 private:
  CLI::App* parser_;
};

}  // namespace laywright
