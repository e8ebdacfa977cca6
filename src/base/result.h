// A value, or the issues that stand in its way. A value may carry warnings.
#pragma once

#include <cassert>
#include <optional>
#include <utility>

#include "base/issue.h"

namespace laywright {

template <class T>
class [[nodiscard]] Result {
 public:
  Result(T value, Issues warnings = {}) : value_(std::move(value)), issues_(std::move(warnings)) {}
  Result(Issues issues) : issues_(std::move(issues)) { assert(has_error(issues_)); }
  Result(Issue issue) : Result(Issues{std::move(issue)}) {}

  [[nodiscard]] bool ok() const { return value_.has_value(); }
  explicit operator bool() const { return ok(); }

  // Precondition: ok().
  [[nodiscard]] const T& value() const& { return *value_; }
  [[nodiscard]] T&& value() && { return std::move(*value_); }

  [[nodiscard]] const Issues& issues() const { return issues_; }

 private:
  std::optional<T> value_;
  Issues issues_;
};

}  // namespace laywright
