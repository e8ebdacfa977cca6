#include "paper/sheet_file.h"

#include "base/spelling.h"
#include "paper/cairo_sink.h"

namespace laywright {

std::optional<SheetFormat> sheet_format_of(const std::string& file) {
  const std::string ending = ending_of(file);
  if (ending == ".pdf") return SheetFormat::pdf;
  if (ending == ".svg") return SheetFormat::svg;
  if (ending == ".png") return SheetFormat::png;
  return std::nullopt;
}

std::string sheet_bytes(SheetFormat format, const std::vector<Drawing>& pages, int page) {
  switch (format) {
    case SheetFormat::pdf: return to_pdf(pages);
    case SheetFormat::svg: return to_svg(pages[static_cast<std::size_t>(page) - 1]);
    case SheetFormat::png: return to_png(pages[static_cast<std::size_t>(page) - 1]);
  }
  return {};
}

}  // namespace laywright
