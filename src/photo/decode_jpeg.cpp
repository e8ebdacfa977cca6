#include <csetjmp>
#include <cstdio>

#include <fmt/format.h>

#include <jpeglib.h>

#include "photo/exif_orientation.h"
#include "photo/photo_decoders.h"

namespace laywright {
namespace {

// libjpeg ends the program on an error; this comes back instead, with its words.
struct JpegTrouble {
  jpeg_error_mgr manager{};
  std::jmp_buf back{};
  char words[JMSG_LENGTH_MAX] = "";
};

void come_back(j_common_ptr jpeg) {
  auto* trouble = reinterpret_cast<JpegTrouble*>(jpeg->err);  // its first member
  jpeg->err->format_message(jpeg, trouble->words);
  std::longjmp(trouble->back, 1);
}

// A warning is trouble, too: libjpeg fills with grey what a file that is cut short lacks.
void note(j_common_ptr jpeg, int level) {
  if (level >= 0) return;
  auto* trouble = reinterpret_cast<JpegTrouble*>(jpeg->err);
  if (jpeg->err->num_warnings++ == 0) jpeg->err->format_message(jpeg, trouble->words);
}

void say_nothing(j_common_ptr) {}

enum class JpegEnd { read, damaged, wrong_size };

// Nothing here has a destructor: an error leaps over it.
JpegEnd read_rows(jpeg_decompress_struct& jpeg, JpegTrouble& trouble, std::string_view bytes, GreyPhoto& photo,
                  int& orientation) {
  if (setjmp(trouble.back) != 0) return JpegEnd::damaged;
  jpeg_create_decompress(&jpeg);
  jpeg_mem_src(&jpeg, reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
  jpeg_save_markers(&jpeg, JPEG_APP0 + 1, 0xffff);
  jpeg_read_header(&jpeg, TRUE);
  // The end of reading drops the markers.
  for (const jpeg_marker_struct* each = jpeg.marker_list; each != nullptr && orientation == 1; each = each->next) {
    orientation = exif_orientation({reinterpret_cast<const char*>(each->data), each->data_length});
  }
  photo.width = static_cast<int>(jpeg.image_width);
  photo.height = static_cast<int>(jpeg.image_height);
  if (!why_not_that_size(jpeg.image_width, jpeg.image_height).empty()) return JpegEnd::wrong_size;
  jpeg.out_color_space = JCS_GRAYSCALE;
  jpeg_start_decompress(&jpeg);
  photo.grey.resize(std::size_t{jpeg.output_width} * jpeg.output_height);
  while (jpeg.output_scanline < jpeg.output_height) {
    JSAMPROW row = photo.grey.data() + std::size_t{jpeg.output_scanline} * jpeg.output_width;
    jpeg_read_scanlines(&jpeg, &row, 1);
  }
  jpeg_finish_decompress(&jpeg);
  return jpeg.err->num_warnings == 0 ? JpegEnd::read : JpegEnd::damaged;
}

}  // namespace

std::string decode_jpeg(std::string_view bytes, GreyPhoto& photo) {
  JpegTrouble trouble;
  jpeg_decompress_struct jpeg{};
  jpeg.err = jpeg_std_error(&trouble.manager);
  trouble.manager.error_exit = come_back;
  trouble.manager.emit_message = note;
  trouble.manager.output_message = say_nothing;
  int orientation = 1;
  const JpegEnd end = read_rows(jpeg, trouble, bytes, photo, orientation);
  jpeg_destroy_decompress(&jpeg);
  if (end == JpegEnd::damaged) {
    return fmt::format("is a JPEG picture that is damaged or cut short ({}); copy it from the camera again",
                       trouble.words);
  }
  if (end == JpegEnd::wrong_size) {
    return why_not_that_size(static_cast<std::size_t>(photo.width), static_cast<std::size_t>(photo.height));
  }
  photo = upright(std::move(photo), orientation);
  return "";
}

}  // namespace laywright
