#include "base/today.h"

#include <array>
#include <charconv>
#include <cstdlib>
#include <cstring>
#include <ctime>

namespace laywright {
namespace {

std::string day_of(const std::tm& parts) {
  std::array<char, 16> text{};
  return {text.data(), std::strftime(text.data(), text.size(), "%Y-%m-%d", &parts)};
}

}  // namespace

std::string today() {
  std::tm parts{};
  std::time_t seconds = 0;
  if (const char* given = std::getenv("SOURCE_DATE_EPOCH")) {
    const char* end = given + std::strlen(given);
    long long value = 0;
    const auto [stopped, error] = std::from_chars(given, end, value);
    seconds = static_cast<std::time_t>(value);
    if (error == std::errc() && stopped == end && gmtime_r(&seconds, &parts) != nullptr) return day_of(parts);
  }
  seconds = std::time(nullptr);
  return localtime_r(&seconds, &parts) != nullptr ? day_of(parts) : "";
}

}  // namespace laywright
