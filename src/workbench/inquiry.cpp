#include "workbench/inquiry.h"

#include <fmt/format.h>

namespace laywright {

std::optional<double> seconds_left(std::chrono::steady_clock::time_point begun, double share) {
  // Before this, an estimate would jump about.
  constexpr double least_share = 0.05, least_seconds = 1.0;
  const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begun).count();
  if (share < least_share || seconds < least_seconds) return std::nullopt;
  return seconds * (1.0 - share) / share;
}

std::string trouble_words(const Issues& issues) {
  if (issues.empty()) return "";
  const Issue& issue = issues.front();
  std::string words = issue.key;
  if (!issue.value.empty()) words += fmt::format(" {}", issue.value);
  words += fmt::format("{}{}", words.empty() ? "" : " ", issue.what);
  if (!issue.allowed.empty()) words += fmt::format(" (allowed: {})", issue.allowed);
  return words;
}

}  // namespace laywright
