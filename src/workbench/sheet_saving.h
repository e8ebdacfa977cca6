// The set-up sheet on its way into a file.
#pragma once

#include <mutex>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/issue.h"
#include "report/drawing.h"

namespace laywright {

struct SheetSaving {
  std::string path;
  std::optional<Issues> outcome;  // none while it is being written; empty: it was
};

// From the thread that writes to the one that asked.
class SheetMail {
 public:
  void put(Issues outcome) {
    const std::lock_guard lock(mutex_);
    outcome_ = std::move(outcome);
  }
  [[nodiscard]] std::optional<Issues> take() {
    const std::lock_guard lock(mutex_);
    return std::exchange(outcome_, std::nullopt);
  }

 private:
  std::mutex mutex_;
  std::optional<Issues> outcome_;
};

// As a whole or not at all. Precondition: the path has an ending that sheet_format_of knows. Errors: there is too little
// memory; the file cannot be written.
[[nodiscard]] Issues write_sheet(const std::string& path, const std::vector<Drawing>& pages, int page);

}  // namespace laywright
