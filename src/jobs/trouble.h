// What goes wrong in work that nobody stands beside: caught in one place, and told in words that help.
#pragma once

#include <exception>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "base/issue.h"

namespace laywright {

struct Trouble {
  Issue issue;               // for a person
  std::exception_ptr cause;  // for who has to throw it again
};

// Does the work; whatever it throws is the trouble, none when all went well. `what` stands in the words: "the share
// page". This is the one place that catches what background work throws: too little memory, the standard library's
// exceptions, and anything else.
[[nodiscard]] std::optional<Trouble> attempt_call(std::string_view what, void (*work)(void*), void* given) noexcept;

template <class Work>
[[nodiscard]] std::optional<Trouble> attempt(std::string_view what, Work&& work) noexcept {
  auto call = [&work] { work(); };
  return attempt_call(
      what, [](void* given) { (*static_cast<decltype(call)*>(given))(); }, &call);
}

// A piece of work, and who hears of its trouble.
struct Task {
  std::string what;                          // as above
  std::function<void()> work;                // on whatever thread does it
  std::function<void(const Issue&)> failed;  // on the same; none: nobody
};

// Does it and tells of its trouble; nothing escapes.
void carry_out(const Task& task) noexcept;

// Of work that is not done, since the system starts no thread for it.
[[nodiscard]] Issue no_thread_for(std::string_view what);

// The first of them as a sentence, for a window: what is wrong, behind the key or else the file that it is about.
[[nodiscard]] std::string trouble_words(const Issues& issues);

}  // namespace laywright
