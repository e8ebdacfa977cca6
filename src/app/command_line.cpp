#include "app/command_line.h"

#include <cstdint>
#include <optional>
#include <utility>

#include <CLI/CLI.hpp>

namespace laywright {

OptionCheck one_of(std::vector<std::string> words) {
  return [check = CLI::IsMember(std::move(words))](std::string text) { return check(text); };
}

CommandOption CommandOption::type_name(const std::string& name) const {
  option_->type_name(name);
  return *this;
}

CommandOption CommandOption::group(const std::string& heading) const {
  option_->group(heading);
  return *this;
}

CommandOption CommandOption::envname(const std::string& name) const {
  option_->envname(name);
  return *this;
}

CommandOption CommandOption::required(bool is) const {
  option_->required(is);
  return *this;
}

CommandOption CommandOption::capture_default_str() const {
  option_->capture_default_str();
  return *this;
}

CommandOption CommandOption::check(OptionCheck check) const {
  option_->check(CLI::Validator([check = std::move(check)](const std::string& text) { return check(text); }, ""));
  return *this;
}

CommandOption CommandOption::one_at_a_time() const {
  option_->allow_extra_args(false);
  return *this;
}

CommandOption CommandOption::needs(CommandOption other) const {
  option_->needs(other.option_);
  return *this;
}

CommandOption CommandOption::needs(const std::string& other) const {
  option_->needs(other);
  return *this;
}

CommandOption CommandOption::excludes(CommandOption other) const {
  option_->excludes(other.option_);
  return *this;
}

CommandOption CommandOption::excludes(const std::string& other) const {
  option_->excludes(other);
  return *this;
}

bool CommandOption::given() const { return option_->count() > 0; }

const std::vector<std::string>& CommandOption::results() const { return option_->results(); }

std::string CommandOption::name() const { return option_->get_name(); }

void CommandOption::refuse(const std::string& why) const { throw CLI::ValidationError(name(), why); }

CommandLine CommandLine::add_command(const std::string& name, const std::string& help) const {
  return CommandLine(*parser_->add_subcommand(name, help));
}

template <class T>
CommandOption CommandLine::add_option(const std::string& name, T& value, const std::string& help) const {
  return CommandOption(parser_->add_option(name, value, help));
}

CommandOption CommandLine::add_option_function(const std::string& name,
                                               const std::function<void(const std::string&)>& take,
                                               const std::string& help) const {
  return CommandOption(parser_->add_option_function<std::string>(name, take, help));
}

CommandOption CommandLine::add_flag(const std::string& name, bool& value, const std::string& help) const {
  return CommandOption(parser_->add_flag(name, value, help));
}

CommandOption CommandLine::option(const std::string& name) const { return CommandOption(parser_->get_option(name)); }

std::vector<CommandOption> CommandLine::options() const {
  std::vector<CommandOption> all;
  for (CLI::Option* each : parser_->get_options()) all.emplace_back(each);
  return all;
}

void CommandLine::footer(const std::string& text) const { parser_->footer(text); }

void CommandLine::require_command() const { parser_->require_subcommand(1); }

void CommandLine::callback(std::function<void()> run) const { parser_->callback(std::move(run)); }

void CommandLine::when_parsed(std::function<void()> run) const { parser_->parse_complete_callback(std::move(run)); }

template CommandOption CommandLine::add_option(const std::string&, std::string&, const std::string&) const;
template CommandOption CommandLine::add_option(const std::string&, std::vector<std::string>&,
                                               const std::string&) const;
template CommandOption CommandLine::add_option(const std::string&, int&, const std::string&) const;
template CommandOption CommandLine::add_option(const std::string&, long long&, const std::string&) const;
template CommandOption CommandLine::add_option(const std::string&, std::uint64_t&, const std::string&) const;
template CommandOption CommandLine::add_option(const std::string&, double&, const std::string&) const;
template CommandOption CommandLine::add_option(const std::string&, std::optional<int>&, const std::string&) const;
template CommandOption CommandLine::add_option(const std::string&, std::optional<double>&, const std::string&) const;

}  // namespace laywright
