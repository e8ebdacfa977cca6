// Picks findings of one kind.
#pragma once

#include <vector>

#include "measure/measurements.h"

namespace laywright::synthetic {

inline std::vector<Finding> of_kind(const Measurements& m, FindingKind kind) {
  std::vector<Finding> found;
  for (const Finding& finding : m.findings) {
    if (finding.kind == kind) found.push_back(finding);
  }
  return found;
}

inline bool says(const Finding& finding, const std::string& words) {
  return finding.text.find(words) != std::string::npos;
}

}  // namespace laywright::synthetic
