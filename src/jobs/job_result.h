// What background work comes to: a value, a trouble, or nothing, since it was stopped.
#pragma once

#include <cassert>
#include <optional>
#include <utility>

#include "base/result.h"

namespace laywright {

struct Stopped {};

template <class T>
class [[nodiscard]] JobResult {
 public:
  JobResult(T value) : value_(std::move(value)) {}
  // Precondition: there is at least one.
  JobResult(Issues trouble) : trouble_(std::move(trouble)) { assert(!trouble_.empty()); }
  JobResult(Issue trouble) : JobResult(Issues{std::move(trouble)}) {}
  JobResult(Stopped) {}
  JobResult(Result<T> result) {
    if (result.ok()) {
      value_ = std::move(result).value();
    } else {
      trouble_ = result.issues();
    }
  }

  [[nodiscard]] bool done() const { return value_.has_value(); }
  [[nodiscard]] bool stopped() const { return !done() && trouble_.empty(); }
  // Empty where there is none.
  [[nodiscard]] const Issues& trouble() const { return trouble_; }

  // Precondition: done().
  [[nodiscard]] T& value() { return *value_; }

 private:
  std::optional<T> value_;
  Issues trouble_;
};

}  // namespace laywright
