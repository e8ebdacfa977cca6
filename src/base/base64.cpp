#include "base/base64.h"

#include <array>
#include <cstdint>

namespace laywright {
namespace {

constexpr std::string_view letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

// Of each character its place among the letters, 64 where it has none.
constexpr std::array<std::uint8_t, 256> places = [] {
  std::array<std::uint8_t, 256> all{};
  all.fill(64);
  for (std::size_t i = 0; i < letters.size(); ++i) {
    all[static_cast<unsigned char>(letters[i])] = static_cast<std::uint8_t>(i);
  }
  return all;
}();

}  // namespace

std::string to_base64(std::string_view bytes) {
  std::string out;
  out.reserve(bytes.size() * 4 / 3 + 4);
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    const std::string_view group = bytes.substr(i, 3);
    std::uint32_t bits = 0;
    for (std::size_t k = 0; k < 3; ++k) {
      const std::uint32_t byte = k < group.size() ? static_cast<std::uint8_t>(group[k]) : 0U;
      bits = bits << 8U | byte;
    }
    for (std::size_t k = 0; k < 4; ++k) {
      out += k <= group.size() ? letters[bits >> (18U - 6U * static_cast<unsigned>(k)) & 63U] : '=';
    }
  }
  return out;
}

std::optional<std::string> from_base64(std::string_view text) {
  if (text.size() % 4 != 0) return std::nullopt;
  std::string out;
  out.reserve(text.size() / 4 * 3);
  for (std::size_t i = 0; i < text.size(); i += 4) {
    std::string_view group = text.substr(i, 4);
    if (i + 4 == text.size()) group = group.substr(0, group.find('='));
    if (group.size() < 2 ||
        text.substr(i + group.size(), 4 - group.size()).find_first_not_of('=') != std::string_view::npos)
      return std::nullopt;
    std::uint32_t bits = 0;
    for (std::size_t k = 0; k < 4; ++k) {
      const std::uint32_t place = k < group.size() ? places[static_cast<unsigned char>(group[k])] : 0U;
      if (place > 63U) return std::nullopt;
      bits = bits << 6U | place;
    }
    for (std::size_t k = 0; k + 1 < group.size(); ++k) {
      out += static_cast<char>(bits >> (16U - 8U * static_cast<unsigned>(k)) & 0xffU);
    }
  }
  return out;
}

}  // namespace laywright
