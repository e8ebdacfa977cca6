#include "paper/square_code.h"

#include <memory>

#include <qrencode.h>

#include "paper/drafting.h"

namespace laywright {

void draw_square_code(Drawing& page, Point corner, double side_mm, const std::string& words) {
  const std::unique_ptr<QRcode, decltype(&QRcode_free)> code(QRcode_encodeString8bit(words.c_str(), 0, QR_ECLEVEL_Q),
                                                             QRcode_free);
  if (!code) return;
  constexpr int quiet = 4;
  const double module_mm = side_mm / (code->width + 2 * quiet);
  draw_box(page, {corner.x, corner.y, side_mm, side_mm}, paper, {});
  const auto dark = [&](int row, int column) { return (code->data[row * code->width + column] & 1U) != 0; };
  for (int row = 0; row < code->width; ++row) {
    for (int from = 0; from < code->width; ++from) {
      if (!dark(row, from)) continue;
      int to = from;
      while (to < code->width && dark(row, to)) ++to;
      draw_box(page,
               {corner.x + module_mm * (from + quiet), corner.y + module_mm * (row + quiet), module_mm * (to - from),
                module_mm},
               ink, {});
      from = to;
    }
  }
}

}  // namespace laywright
