#include "photo/read_photo.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "base/png_header.h"
#include "base/read_file.h"
#include "photo/photo_decoders.h"

namespace laywright {

std::string why_not_that_size(std::size_t width, std::size_t height) {
  if (std::min(width, height) < std::size_t{least_photo_side}) {
    return fmt::format("is a picture of {} x {} pixels; at least {} a side are needed", width, height,
                       least_photo_side);
  }
  if (std::max(width, height) > std::size_t{longest_photo_side} || width * height > most_photo_pixels) {
    return fmt::format(
        "is a picture of {} x {} pixels; at most {} a side and {} million in all are read: make it smaller", width,
        height, longest_photo_side, most_photo_pixels / 1'000'000);
  }
  return "";
}

Result<GreyPhoto> decode_photo(std::string_view bytes, std::string file) {
  Issue issue;
  issue.file = std::move(file);
  GreyPhoto photo;
  if (bytes.starts_with("\xFF\xD8\xFF")) {
    issue.what = decode_jpeg(bytes, photo);
  } else if (is_png(bytes)) {
    issue.what = decode_png(bytes, photo);
  } else {
    issue.what = "is neither a JPEG nor a PNG picture; save the photograph as one of these";
  }
  if (!issue.what.empty()) return issue;
  return photo;
}

Result<GreyPhoto> load_photo(const std::filesystem::path& path) {
  const Result<std::string> bytes = read_file(path, "a photograph", largest_photo_bytes);
  if (!bytes.ok()) return bytes.issues();
  return decode_photo(bytes.value(), path.string());
}

}  // namespace laywright
