// The set-up sheet's pages as they will print, as drawings and as images of the size in which they are looked at.
#pragma once

#include <array>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "desk/wound.h"
#include "paper/setup_sheet.h"
#include "ui/panel_image.h"

namespace laywright {

// Draws a build for paper, on the thread that asks; without pixels where that cannot be.
using PaperPicture = std::function<Bitmap(const SceneSource&)>;

struct SheetRequest {
  WoundPtr wound;             // full, with its machine's side
  std::optional<Plan> plan;   // as it stands: its title and notes may be newer than the build
  std::uint64_t changes = 0;  // of the document, that tell one plan from the next
  Paper paper = Paper::a4;
  int page_width_px = 0;
  VerdictPtr verdict{};  // over draws, where the build was judged so; else its own
};

struct SheetPages {
  std::weak_ptr<const Wound> wound;
  std::uint64_t changes = 0;
  Paper paper = Paper::a4;
  int page_width_px = 0;
  VerdictPtr verdict;
  std::shared_ptr<const Bitmap> picture;  // of the build
  std::shared_ptr<const std::vector<Drawing>> drawings;
  std::array<PanelImage, setup_pages> images;
};

// As high as wide.
[[nodiscard]] double height_of(Paper paper);

// What draw_sheet() will give, without drawings.
[[nodiscard]] SheetPages promise_of(const SheetRequest& request);
// Of the same build and plan, on the same paper.
[[nodiscard]] bool same_sheet(const SheetPages& pages, const SheetRequest& request);
// And in the same size.
[[nodiscard]] bool serves(const SheetPages& pages, const SheetRequest& request);

// May take a second; safe on any thread. `picture`: of the same build, if it was drawn before.
[[nodiscard]] SheetPages draw_sheet(const SheetRequest& request, std::shared_ptr<const Bitmap> picture,
                                    const PaperPicture& draw_picture);

}  // namespace laywright
