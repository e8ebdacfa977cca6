#include "paint/logo.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <memory>

#include <cairo.h>
#include <fmt/format.h>

#include "base/png_header.h"
#include "base/read_file.h"
#include "paint/svg_logo.h"

namespace laywright {
namespace {

Issue issue_of(const std::string& file, std::string what) {
  Issue issue;
  issue.file = file;
  issue.what = std::move(what);
  return issue;
}

cairo_status_t take(void* from, unsigned char* to, unsigned int count) {
  auto& left = *static_cast<std::string_view*>(from);
  if (left.size() < count) return CAIRO_STATUS_READ_ERROR;
  std::memcpy(to, left.data(), count);
  left.remove_prefix(count);
  return CAIRO_STATUS_SUCCESS;
}

// Of whatever format; as large as asked for.
Image redrawn(cairo_surface_t* from, int width, int height) {
  const LogoSurface to = logo_surface(width, height);
  {
    const std::unique_ptr<cairo_t, decltype(&cairo_destroy)> context(cairo_create(to.get()), &cairo_destroy);
    cairo_scale(context.get(), static_cast<double>(width) / cairo_image_surface_get_width(from),
                static_cast<double>(height) / cairo_image_surface_get_height(from));
    cairo_set_source_surface(context.get(), from, 0.0, 0.0);
    cairo_pattern_set_filter(cairo_get_source(context.get()), CAIRO_FILTER_BEST);
    cairo_paint(context.get());
    if (cairo_status(context.get()) != CAIRO_STATUS_SUCCESS) return {};
  }
  return pixels_of(to.get());
}

Result<Image> png_logo(std::string_view bytes, const std::string& file) {
  const std::string damaged = "this PNG is damaged and cannot be decoded; save the logo anew";
  const auto size = png_size(bytes);
  if (!size) return issue_of(file, damaged);
  const auto [wide, high] = *size;
  if (wide == 0 || high == 0) return issue_of(file, damaged);
  // Before anything is unpacked: a small file can say that it is of any size.
  if (std::max(wide, high) > largest_logo_px) {
    Issue issue = issue_of(file, "this logo has too many pixels; save it smaller");
    issue.value = fmt::format("{} x {} pixels", wide, high);
    issue.allowed = fmt::format("up to {} by {}", largest_logo_px, largest_logo_px);
    return issue;
  }
  std::string_view left = bytes;
  const LogoSurface surface(cairo_image_surface_create_from_png_stream(&take, &left), &cairo_surface_destroy);
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) return issue_of(file, damaged);
  const auto [width, height] = fitted_logo(wide, high);
  Image image = redrawn(surface.get(), width, height);
  if (image.bytes.empty()) return issue_of(file, "there is too little memory for this logo");
  return image;
}

// Behind white space, marks and comments stands a tag.
bool looks_like_svg(std::string_view bytes) {
  const std::size_t begin = bytes.find_first_not_of(" \t\r\n\xEF\xBB\xBF");
  return begin != std::string_view::npos && bytes[begin] == '<' && bytes.find("<svg") != std::string_view::npos;
}

}  // namespace

LogoSurface logo_surface(int width, int height) {
  return {cairo_image_surface_create(CAIRO_FORMAT_ARGB32, width, height), &cairo_surface_destroy};
}

std::array<int, 2> fitted_logo(double width, double height) {
  const double times = std::min(1.0, drawn_logo_px / std::max(width, height));
  const auto side = [&](double px) { return std::max(1, static_cast<int>(std::lround(px * times))); };
  return {side(width), side(height)};
}

Image pixels_of(cairo_surface_t* surface) {
  cairo_surface_flush(surface);
  if (cairo_surface_status(surface) != CAIRO_STATUS_SUCCESS) return {};
  Image image{cairo_image_surface_get_width(surface), cairo_image_surface_get_height(surface), {}};
  const unsigned char* rows = cairo_image_surface_get_data(surface);
  const auto stride = static_cast<std::size_t>(cairo_image_surface_get_stride(surface));
  const auto width = static_cast<std::size_t>(image.width), height = static_cast<std::size_t>(image.height);
  image.bytes.reserve(4 * width * height);
  for (std::size_t y = 0; y < height; ++y)
    for (std::size_t x = 0; x < width; ++x) {
      // Cairo keeps a pixel as one number in the machine's own byte order.
      std::uint32_t pixel = 0;
      std::memcpy(&pixel, rows + y * stride + 4 * x, sizeof pixel);
      for (const unsigned shift : {16U, 8U, 0U, 24U})
        image.bytes.push_back(static_cast<std::uint8_t>(pixel >> shift & 0xFFU));
    }
  return image;
}

Result<Image> logo_from(std::string_view bytes, const std::string& file) {
  if (is_png(bytes)) return png_logo(bytes, file);
  if (looks_like_svg(bytes)) return svg_logo(bytes, file);
  Issue issue = issue_of(file, "this is no picture that can be a logo; save it as a PNG or an SVG");
  issue.allowed = "PNG or SVG";
  return issue;
}

Result<Image> read_logo(const std::string& file) {
  const Result<std::string> bytes = read_file(file, "a logo, a PNG or an SVG", largest_logo_bytes);
  if (!bytes.ok()) return bytes.issues();
  return logo_from(bytes.value(), file);
}

}  // namespace laywright
