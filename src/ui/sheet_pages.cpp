#include "ui/sheet_pages.h"

#include "base/today.h"
#include "report/cairo_sink.h"

namespace laywright {
namespace {

constexpr double mm_per_inch = 25.4;

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

SheetPages promise_of(const SheetWish& wish) {
  SheetPages pages;
  pages.wound = wish.wound;
  pages.changes = wish.changes;
  pages.paper = wish.paper;
  pages.page_width_px = wish.page_width_px;
  pages.verdict = wish.verdict;
  return pages;
}

bool same_sheet(const SheetPages& pages, const SheetWish& wish) {
  return pages.wound.lock() == wish.wound && pages.changes == wish.changes && pages.paper == wish.paper &&
         pages.verdict == wish.verdict;
}

bool serves(const SheetPages& pages, const SheetWish& wish) {
  return same_sheet(pages, wish) && pages.page_width_px == wish.page_width_px;
}

SheetPages draw_sheet(const SheetWish& wish, std::shared_ptr<const Bitmap> picture,
                      const PaperPicture& draw_picture) {
  SheetPages pages = promise_of(wish);
  const Wound& wound = *wish.wound;
  if (!picture && draw_picture) picture = std::make_shared<const Bitmap>(draw_picture(wound.source));
  const TakeupPtr run = wound.takeup();
  SetupSheet sheet{*wish.plan, wound.build(), wound.measurements(), *run, wish.paper, {}};
  if (picture) sheet.picture = *picture;
  if (wish.verdict) sheet.verdict = *wish.verdict;
  sheet.drawn_on = today();
  pages.picture = std::move(picture);
  auto drawings = std::make_shared<const std::vector<Drawing>>(draw_setup_sheet(sheet));
  for (std::size_t i = 0; i < pages.images.size(); ++i) {
    pages.images[i] = image_of((*drawings)[i], wish.page_width_px);
  }
  pages.drawings = std::move(drawings);
  return pages;
}

}  // namespace laywright
