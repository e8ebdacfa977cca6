#include "photo/exif_orientation.h"

#include <cstdint>
#include <utility>

namespace laywright {
namespace {

// Numbers in a TIFF header, in the order of bytes that it says; 0 beyond its end.
class TiffBytes {
 public:
  TiffBytes(std::string_view bytes, bool big) : bytes_(bytes), big_(big) {}

  [[nodiscard]] std::uint32_t number(std::size_t at, std::size_t size) const {
    if (at > bytes_.size() || bytes_.size() - at < size) return 0;
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < size; ++i) {
      value = value << 8 | static_cast<std::uint8_t>(bytes_[at + (big_ ? i : size - 1 - i)]);
    }
    return value;
  }

 private:
  std::string_view bytes_;
  bool big_;
};

}  // namespace

int exif_orientation(std::string_view app1) {
  constexpr std::string_view lead("Exif\0\0", 6);
  if (!app1.starts_with(lead)) return 1;
  const std::string_view tiff = app1.substr(lead.size());
  if (!tiff.starts_with("II") && !tiff.starts_with("MM")) return 1;
  const TiffBytes bytes(tiff, tiff[0] == 'M');
  const std::size_t first = bytes.number(4, 4);
  const std::uint32_t entries = bytes.number(first, 2);
  for (std::uint32_t i = 0; i < entries; ++i) {
    const std::size_t entry = first + 2 + std::size_t{12} * i;
    if (bytes.number(entry, 2) != 0x0112) continue;
    const std::uint32_t told = bytes.number(entry + 8, 2);
    return told >= 1 && told <= 8 ? static_cast<int>(told) : 1;
  }
  return 1;
}

GreyPhoto upright(GreyPhoto photo, int orientation) {
  if (orientation <= 1 || orientation > 8) return photo;
  const bool over = orientation >= 5;
  GreyPhoto turned;
  turned.width = over ? photo.height : photo.width;
  turned.height = over ? photo.width : photo.height;
  turned.grey.resize(photo.grey.size());
  // Where what comes first in the file is seen last.
  const bool down_is_turned = orientation == 3 || orientation == 4 || orientation == 7 || orientation == 8;
  const bool along_is_turned = orientation == 2 || orientation == 3 || orientation == 6 || orientation == 7;
  for (int y = 0; y < turned.height; ++y) {
    for (int x = 0; x < turned.width; ++x) {
      const int from_right = turned.width - 1 - x, from_below = turned.height - 1 - y;
      const int along = along_is_turned ? from_right : x, down = down_is_turned ? from_below : y;
      const int row = over ? along : down, column = over ? down : along;
      turned
          .grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(turned.width) + static_cast<std::size_t>(x)] =
          photo.grey[static_cast<std::size_t>(row) * static_cast<std::size_t>(photo.width) +
                     static_cast<std::size_t>(column)];
    }
  }
  return turned;
}

}  // namespace laywright
