#include "ui/sheet_pages.h"

#include "base/inch.h"
#include "base/today.h"
#include "paper/cairo_sink.h"

namespace laywright {
namespace {

PanelImage image_of(const Drawing& page, int width_px) {
  const Bitmap bitmap = to_pixels(page, width_px / page.width_mm * mm_per_inch);
  PanelImage image;
  image.width = bitmap.width;
  image.height = bitmap.height;
  image.pixels.reserve(bitmap.pixels.size() / 4);
  for (std::size_t i = 0; i + 3 < bitmap.pixels.size(); i += 4) {
    image.pixels.push_back({bitmap.pixels[i], bitmap.pixels[i + 1], bitmap.pixels[i + 2], 255});
  }
  return image;
}

}  // namespace

double height_of(Paper paper) { return paper == Paper::a4 ? 297.0 / 210.0 : 279.4 / 215.9; }

SheetPages promise_of(const SheetRequest& request) {
  SheetPages pages;
  pages.wound = request.wound;
  pages.changes = request.changes;
  pages.paper = request.paper;
  pages.page_width_px = request.page_width_px;
  pages.verdict = request.verdict;
  return pages;
}

bool same_sheet(const SheetPages& pages, const SheetRequest& request) {
  return pages.wound.lock() == request.wound && pages.changes == request.changes && pages.paper == request.paper &&
         pages.verdict == request.verdict;
}

bool serves(const SheetPages& pages, const SheetRequest& request) {
  return same_sheet(pages, request) && pages.page_width_px == request.page_width_px;
}

SheetPages draw_sheet(const SheetRequest& request, std::shared_ptr<const Bitmap> picture,
                      const PaperPicture& draw_picture) {
  SheetPages pages = promise_of(request);
  const Wound& wound = *request.wound;
  if (!picture && draw_picture) picture = std::make_shared<const Bitmap>(draw_picture(wound.source));
  const TakeupPtr run = wound.takeup();
  SetupSheet sheet{*request.plan, wound.build(), wound.measurements(), *run, request.paper, {}};
  if (picture) sheet.picture = *picture;
  if (request.verdict) sheet.verdict = *request.verdict;
  sheet.drawn_on = today();
  pages.picture = std::move(picture);
  auto drawings = std::make_shared<const std::vector<Drawing>>(draw_setup_sheet(sheet));
  for (std::size_t i = 0; i < pages.images.size(); ++i) {
    pages.images[i] = image_of((*drawings)[i], request.page_width_px);
  }
  pages.drawings = std::move(drawings);
  return pages;
}

}  // namespace laywright
