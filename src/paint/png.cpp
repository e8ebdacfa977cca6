#include "paint/png.h"

#include <cairo.h>

#include <cstdint>
#include <memory>
#include <utility>

namespace laywright {
namespace {

struct Packing {
  std::string bytes;
  const std::function<bool()>& goes_on;
};

cairo_status_t append(void* to, const unsigned char* data, unsigned int length) {
  Packing& packing = *static_cast<Packing*>(to);
  if (packing.goes_on && !packing.goes_on()) return CAIRO_STATUS_WRITE_ERROR;
  packing.bytes.append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace

std::string to_png(const Image& image, const std::function<bool()>& goes_on) {
  const std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)> surface(
      cairo_image_surface_create(CAIRO_FORMAT_ARGB32, image.width, image.height), &cairo_surface_destroy);
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) return {};
  unsigned char* rows = cairo_image_surface_get_data(surface.get());
  const auto stride = static_cast<std::size_t>(cairo_image_surface_get_stride(surface.get()));
  const auto width = static_cast<std::size_t>(image.width);
  for (std::size_t y = 0; y < static_cast<std::size_t>(image.height); ++y)
    for (std::size_t x = 0; x < width; ++x) {
      const std::uint8_t* from = &image.bytes[(y * width + x) * 4];
      // Cairo keeps a pixel as one number in the machine's own byte order.
      const std::uint32_t pixel = std::uint32_t{from[3]} << 24 | std::uint32_t{from[0]} << 16 |
                                  std::uint32_t{from[1]} << 8 | std::uint32_t{from[2]};
      *reinterpret_cast<std::uint32_t*>(rows + y * stride + x * 4) = pixel;
    }
  cairo_surface_mark_dirty(surface.get());
  Packing packing{{}, goes_on};
  if (cairo_surface_write_to_png_stream(surface.get(), &append, &packing) != CAIRO_STATUS_SUCCESS) return {};
  return std::move(packing.bytes);
}

}  // namespace laywright
