#include "jobs/trouble.h"

#include <new>
#include <utility>

#include <fmt/format.h>

#include "base/spelling.h"

namespace laywright {
namespace {

Issue issue_of(std::string what) {
  Issue issue;
  issue.what = std::move(what);
  return issue;
}

Issue no_memory_for(std::string_view what) {
  return issue_of(
      fmt::format("there is not enough memory for {}: make the wind shorter, or close other programs", what));
}

Issue flaw_in(std::string_view what, std::string_view why) {
  return issue_of(fmt::format(
      "something went wrong with {} ({}): try it again, and if that does not help, start the program anew", what,
      why));
}

std::string with_full_stop(std::string words) {
  if (!words.empty() && words.back() != '.' && words.back() != '?') words += '.';
  return words;
}

std::string as_sentence(std::string words) { return with_full_stop(capitalised(std::move(words))); }

}  // namespace

std::optional<Trouble> attempt_call(std::string_view what, void (*work)(void*), void* given) noexcept {
  // Its words are made before the work: when that has run out of memory, there may be none for words either. These few
  // fit where they stand, should there be none now. The work is done in either case: others may wait for what it does at its end.
  Trouble no_memory{issue_of("out of memory"), nullptr};
  try {
    no_memory.issue = no_memory_for(what);
  } catch (const std::bad_alloc&) {
  }
  std::exception_ptr cause;
  const char* why = "it does not say what";
  try {
    work(given);
    return std::nullopt;
  } catch (const std::bad_alloc&) {
    no_memory.cause = std::current_exception();
    return no_memory;
  } catch (const std::exception& error) {
    cause = std::current_exception();
    why = error.what();  // as long as it is the cause
  } catch (...) {
    cause = std::current_exception();
  }
  Trouble flaw{{}, cause};
  if (attempt(what, [&] { flaw.issue = flaw_in(what, why); })) flaw.issue = std::move(no_memory.issue);
  return flaw;
}

void carry_out(const Task& task) noexcept {
  const std::optional<Trouble> trouble = attempt(task.what, task.work);
  // Who cannot even hear of it has run out of memory, too: nothing is left to be done.
  if (trouble && task.failed) (void)attempt(task.what, [&] { task.failed(trouble->issue); });
}

Issue no_thread_for(std::string_view what) {
  return issue_of(
      fmt::format("the system starts no further thread for {}: close other programs, and try again", what));
}

std::string trouble_words(const Issues& issues) {
  if (issues.empty()) return "";
  const Issue& issue = issues.front();
  const std::string& where = issue.key.empty() ? issue.file : issue.key;
  const std::string allowed = issue.allowed.empty() ? "" : fmt::format(" (allowed: {})", issue.allowed);
  if (where.empty() && issue.value.empty()) return as_sentence(issue.what + allowed);
  const std::string value = issue.value.empty() ? "" : fmt::format(" {}", issue.value);
  return with_full_stop(fmt::format("{}{} {}{}", where, value, issue.what, allowed));
}

}  // namespace laywright
