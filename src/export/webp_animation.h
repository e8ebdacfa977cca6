// Moving pictures as WebP.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <string>

namespace laywright {

struct WebpSettings {
  int width = 0, height = 0;        // pixels, 1 to 16383
  double frames_per_second = 20.0;  // above 0; a frame lasts a whole number of milliseconds, errors do not add up
  double quality = 80.0;            // 0 to 100 (100: without loss)
};

class WebpAnimation {
 public:
  // Plays again without end. Throws std::bad_alloc.
  explicit WebpAnimation(const WebpSettings& settings);
  WebpAnimation(WebpAnimation&&) noexcept;
  WebpAnimation& operator=(WebpAnimation&&) noexcept;
  ~WebpAnimation();

  // Rows from above to below, four bytes a pixel: red, green, blue, opacity, not premultiplied; width * height of them.
  // False when there is too little memory.
  [[nodiscard]] bool add(std::span<const std::uint8_t> pixels);

  // The bytes of the file; empty when there is too little memory, or no frame. Adds no more frames afterwards.
  [[nodiscard]] std::string finish();

 private:
  struct Encoder;
  std::unique_ptr<Encoder> encoder_;
};

}  // namespace laywright
