#include "base/png_header.h"

namespace laywright {
namespace {

constexpr std::string_view signature = "\x89PNG\r\n\x1a\n";
// Signature, length and name of the first chunk; width and height begin it, with a checksum behind it.
constexpr std::size_t name_at = 12, width_at = 16, height_at = 20, header_bytes = 33;

std::uint32_t number_at(std::string_view bytes, std::size_t at) {
  std::uint32_t number = 0;
  for (std::size_t i = at; i < at + 4; ++i) number = number << 8U | static_cast<unsigned char>(bytes[i]);
  return number;
}

}  // namespace

bool is_png(std::string_view bytes) { return bytes.starts_with(signature); }

std::optional<std::array<std::uint32_t, 2>> png_size(std::string_view bytes) {
  if (!is_png(bytes) || bytes.size() < header_bytes || bytes.substr(name_at, 4) != "IHDR") return std::nullopt;
  return std::array{number_at(bytes, width_at), number_at(bytes, height_at)};
}

}  // namespace laywright
