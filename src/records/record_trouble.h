// What databases say when they fail, in words that help. Inside the folder only.
#pragma once

#include <optional>

#include "base/result.h"
#include "records/records_place.h"

namespace laywright {

// Of the exception that is being caught: what happened, where, and what to do. What a library says is never repeated: it may
// hold a password, and helps nobody. An exception that is none of a database is thrown on.
[[nodiscard]] Issue database_trouble(const RecordsPlace& place);

[[nodiscard]] Issue place_issue(const RecordsPlace& place, std::string what);

// That there is none yet: what open() says of a place that it would have to make.
inline constexpr const char* words_for_none_there =
    "is not there: nothing was recorded yet; `laywright record add` makes it";
inline constexpr const char* words_for_none_yet = "holds no records yet; `laywright record add` makes the first one";

// How long a writer waits for another one.
inline constexpr int writers_wait_s = 10;

// Calls work(), which returns a Result or Issues; what a database throws becomes an issue.
template <class Work>
[[nodiscard]] auto with_trouble_told(const RecordsPlace& place, const Work& work) -> decltype(work()) {
  // Catching all is left to database_trouble, which knows what is a database's.
  try {
    return work();
  } catch (const std::runtime_error&) {
    return Issues{database_trouble(place)};
  }
}

}  // namespace laywright
