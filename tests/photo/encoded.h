// Pictures as files' bytes, by the libraries that cameras and programs write them with.
#pragma once

#include <csetjmp>
#include <cstdlib>
#include <string>

#include <png.h>
#include <stdio.h>  // jpeglib.h asks for it

#include <jpeglib.h>

#include <catch2/catch.hpp>

#include "photo/read_photo.h"

namespace laywright::testing {

// `app1`: the content of a marker of that kind, as a camera's notes are; empty: none.
inline std::string as_jpeg(const GreyPhoto& photo, int quality = 95, const std::string& app1 = "") {
  jpeg_compress_struct jpeg{};
  jpeg_error_mgr errors{};
  jpeg.err = jpeg_std_error(&errors);
  jpeg_create_compress(&jpeg);
  unsigned char* bytes = nullptr;
  unsigned long size = 0;
  jpeg_mem_dest(&jpeg, &bytes, &size);
  jpeg.image_width = static_cast<JDIMENSION>(photo.width);
  jpeg.image_height = static_cast<JDIMENSION>(photo.height);
  jpeg.input_components = 1;
  jpeg.in_color_space = JCS_GRAYSCALE;
  jpeg_set_defaults(&jpeg);
  jpeg_set_quality(&jpeg, quality, TRUE);
  jpeg_start_compress(&jpeg, TRUE);
  if (!app1.empty()) {
    jpeg_write_marker(&jpeg, JPEG_APP0 + 1, reinterpret_cast<const JOCTET*>(app1.data()),
                      static_cast<unsigned>(app1.size()));
  }
  while (jpeg.next_scanline < jpeg.image_height) {
    auto* row = const_cast<JSAMPROW>(photo.grey.data() + std::size_t{jpeg.next_scanline} * jpeg.image_width);
    jpeg_write_scanlines(&jpeg, &row, 1);
  }
  jpeg_finish_compress(&jpeg);
  std::string file(reinterpret_cast<const char*>(bytes), size);
  jpeg_destroy_compress(&jpeg);
  std::free(bytes);
  return file;
}

inline std::string as_png(const GreyPhoto& photo) {
  png_image image{};
  image.version = PNG_IMAGE_VERSION;
  image.width = static_cast<png_uint_32>(photo.width);
  image.height = static_cast<png_uint_32>(photo.height);
  image.format = PNG_FORMAT_GRAY;
  png_alloc_size_t size = 0;
  REQUIRE(png_image_write_to_memory(&image, nullptr, &size, 0, photo.grey.data(), 0, nullptr) != 0);
  std::string file(size, '\0');
  REQUIRE(png_image_write_to_memory(&image, file.data(), &size, 0, photo.grey.data(), 0, nullptr) != 0);
  file.resize(size);
  return file;
}

}  // namespace laywright::testing
