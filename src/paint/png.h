// A picture as a file.
#pragma once

#include <functional>
#include <string>

#include "render/image.h"

namespace laywright {

// The bytes of a PNG file; empty when there is too little memory, or when `goes_on`, asked all the while, says no.
[[nodiscard]] std::string to_png(const Image& image, const std::function<bool()>& goes_on = {});

}  // namespace laywright
