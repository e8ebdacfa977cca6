#include "plan/mixed_colour.h"

#include <algorithm>
#include <charconv>

#include <fmt/format.h>

namespace laywright {
namespace {

constexpr std::uint32_t first_mixed = 0x1000000, last_mixed = 0x1FFFFFF;

}  // namespace

std::optional<FiberColour> mixed_colour(std::string_view text) {
  constexpr std::size_t written = 7;
  if (text.size() != written || text.front() != '#' || text[1] == '-') return std::nullopt;
  std::uint32_t mix = 0;
  const char* const end = text.data() + text.size();
  const auto read = std::from_chars(text.data() + 1, end, mix, 16);
  if (read.ec != std::errc() || read.ptr != end) return std::nullopt;
  return static_cast<FiberColour>(first_mixed + mix);
}

std::optional<std::uint32_t> mix_of(FiberColour colour) {
  const auto value = static_cast<std::uint32_t>(colour);
  if (value < first_mixed || value > last_mixed) return std::nullopt;
  return value - first_mixed;
}

std::string mixed_text(FiberColour colour) { return fmt::format("#{:06x}", mix_of(colour).value_or(0)); }

std::optional<double> choice_written(const FieldInfo& field, std::string_view written) {
  const auto found = std::find(field.choices.begin(), field.choices.end(), written);
  if (found != field.choices.end()) return static_cast<double>(found - field.choices.begin());
  const std::optional<FiberColour> mixed = takes_mixed(field) ? mixed_colour(written) : std::nullopt;
  if (mixed) return static_cast<double>(*mixed);
  return std::nullopt;
}

}  // namespace laywright
