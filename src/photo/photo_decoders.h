// The kinds of files that a photograph comes in. Inside the folder only.
#pragma once

#include <string>
#include <string_view>

#include "photo/read_photo.h"

namespace laywright {

// Why a picture of that size is not taken; empty if it is.
[[nodiscard]] std::string why_not_that_size(std::size_t width, std::size_t height);

// Into `photo`; otherwise why not, in words.
[[nodiscard]] std::string decode_jpeg(std::string_view bytes, GreyPhoto& photo);
[[nodiscard]] std::string decode_png(std::string_view bytes, GreyPhoto& photo);

}  // namespace laywright
