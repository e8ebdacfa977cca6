#include <algorithm>
#include <cstring>
#include <memory>

#include <cairo.h>
#include <fmt/format.h>

#include "base/png_header.h"
#include "photo/photo_decoders.h"

namespace laywright {
namespace {

using CairoSurface = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;

cairo_status_t take(void* rest, unsigned char* to, unsigned int length) {
  auto& bytes = *static_cast<std::string_view*>(rest);
  if (bytes.size() < length) return CAIRO_STATUS_READ_ERROR;
  std::memcpy(to, bytes.data(), length);
  bytes.remove_prefix(length);
  return CAIRO_STATUS_SUCCESS;
}

// Whatever its kind of pixels, over white, so that what is transparent is ground.
CairoSurface over_white(cairo_surface_t* picture, int width, int height) {
  CairoSurface white(cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height), &cairo_surface_destroy);
  const std::unique_ptr<cairo_t, decltype(&cairo_destroy)> pen(cairo_create(white.get()), &cairo_destroy);
  cairo_set_source_rgb(pen.get(), 1.0, 1.0, 1.0);
  cairo_paint(pen.get());
  cairo_set_source_surface(pen.get(), picture, 0.0, 0.0);
  cairo_paint(pen.get());
  cairo_surface_flush(white.get());
  return white;
}

// Brightness as JPEG has it (ITU-R BT.601).
std::uint8_t grey_of(std::uint32_t pixel) {
  const std::uint32_t red = pixel >> 16 & 0xff, green = pixel >> 8 & 0xff, blue = pixel & 0xff;
  return static_cast<std::uint8_t>((299 * red + 587 * green + 114 * blue + 500) / 1000);
}

}  // namespace

std::string decode_png(std::string_view bytes, GreyPhoto& photo) {
  constexpr const char* damaged = "is a PNG picture that is damaged or cut short; copy it again";
  const auto size = png_size(bytes);
  if (!size) return damaged;
  if (std::string why = why_not_that_size((*size)[0], (*size)[1]); !why.empty()) return why;
  std::string_view rest = bytes;
  const CairoSurface picture(cairo_image_surface_create_from_png_stream(take, &rest), &cairo_surface_destroy);
  const cairo_status_t status = cairo_surface_status(picture.get());
  if (status == CAIRO_STATUS_NO_MEMORY) return "there is too little memory for this picture, or it is damaged";
  if (status != CAIRO_STATUS_SUCCESS) return damaged;
  photo.width = cairo_image_surface_get_width(picture.get());
  photo.height = cairo_image_surface_get_height(picture.get());
  const CairoSurface flat = over_white(picture.get(), photo.width, photo.height);
  if (cairo_surface_status(flat.get()) != CAIRO_STATUS_SUCCESS) return "there is too little memory for this picture";
  const auto columns = static_cast<std::size_t>(photo.width), rows = static_cast<std::size_t>(photo.height);
  photo.grey.resize(columns * rows);
  const unsigned char* data = cairo_image_surface_get_data(flat.get());
  const auto stride = static_cast<std::size_t>(cairo_image_surface_get_stride(flat.get()));
  for (std::size_t y = 0; y < rows; ++y) {
    for (std::size_t x = 0; x < columns; ++x) {
      std::uint32_t pixel = 0;
      std::memcpy(&pixel, data + y * stride + 4 * x, sizeof pixel);
      photo.grey[y * columns + x] = grey_of(pixel);
    }
  }
  return "";
}

}  // namespace laywright
