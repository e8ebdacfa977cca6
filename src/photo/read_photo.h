// A photograph from a file, as shades of grey.
#pragma once

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace laywright {

// Rows from above to below; 0 is black, 255 white.
struct GreyPhoto {
  int width = 0, height = 0;
  std::vector<std::uint8_t> grey;  // width * height
};

inline constexpr std::size_t largest_photo_bytes = 100'000'000;
inline constexpr int longest_photo_side = 20'000, least_photo_side = 64;
inline constexpr std::size_t most_photo_pixels = 120'000'000;

// JPEG or PNG, told by the first bytes and not by the name. Turned as the camera noted that it was held (exif_orientation.h).
// What is transparent counts as white ground. Errors, with `file`: neither of both; damaged or cut short; a side shorter than
// least_photo_side or longer than longest_photo_side, or more than most_photo_pixels, found before any is decoded.
[[nodiscard]] Result<GreyPhoto> decode_photo(std::string_view bytes, std::string file);

// Errors also as read_file has them.
[[nodiscard]] Result<GreyPhoto> load_photo(const std::filesystem::path& path);

}  // namespace laywright
