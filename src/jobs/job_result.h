// What background work comes to: a value, a trouble, or nothing, since it was stopped.
#pragma once

#include <utility>
#include <variant>

#include "base/result.h"

namespace laywright {

struct Stopped {};

template <class T>
class [[nodiscard]] JobResult {
 public:
  JobResult(T value) : ended_(std::in_place_index<0>, std::move(value)) {}
  // Precondition: there is at least one.
  JobResult(Issues trouble) : ended_(std::in_place_index<1>, std::move(trouble)) {}
  JobResult(Issue trouble) : JobResult(Issues{std::move(trouble)}) {}
  JobResult(Stopped) : ended_(std::in_place_index<2>) {}
  JobResult(Result<T> result) : JobResult(Stopped{}) {
    if (result.ok()) {
      ended_.template emplace<0>(std::move(result).value());
    } else {
      ended_.template emplace<1>(result.issues());
    }
  }

  [[nodiscard]] bool done() const { return ended_.index() == 0; }
  [[nodiscard]] bool stopped() const { return ended_.index() == 2; }
  // Empty where there is none.
  [[nodiscard]] Issues trouble() const { return ended_.index() == 1 ? std::get<1>(ended_) : Issues{}; }

  // Precondition: done().
  [[nodiscard]] T& value() { return std::get<0>(ended_); }

 private:
  std::variant<T, Issues, Stopped> ended_;
};

}  // namespace laywright
