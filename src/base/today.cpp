#include "base/today.h"

#include <array>
#include <charconv>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <optional>

namespace laywright {
namespace {

template <std::size_t most>
std::string in_format(const char (&format)[most], const std::tm& parts) {
  std::array<char, 32> text{};
  return {text.data(), std::strftime(text.data(), text.size(), format, &parts)};
}

// That the surroundings ask for in place of now.
std::optional<std::time_t> given_time() {
  const char* given = std::getenv("SOURCE_DATE_EPOCH");
  if (given == nullptr) return std::nullopt;
  const char* end = given + std::strlen(given);
  long long value = 0;
  const auto [stopped, error] = std::from_chars(given, end, value);
  if (error != std::errc() || stopped != end) return std::nullopt;
  return static_cast<std::time_t>(value);
}

constexpr char day_format[] = "%Y-%m-%d";

}  // namespace

std::string today() {
  std::tm parts{};
  if (const std::optional<std::time_t> given = given_time()) {
    if (gmtime_r(&*given, &parts) != nullptr) return in_format(day_format, parts);
  }
  const std::time_t seconds = std::time(nullptr);
  return localtime_r(&seconds, &parts) != nullptr ? in_format(day_format, parts) : "";
}

std::string moment() {
  std::tm parts{};
  const std::time_t seconds = given_time().value_or(std::time(nullptr));
  return gmtime_r(&seconds, &parts) != nullptr ? in_format("%Y-%m-%dT%H:%M:%SZ", parts) : "";
}

}  // namespace laywright
