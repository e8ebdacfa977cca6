// What is filled in by hand, and the cautions.
#include <algorithm>

#include "paper/drafting.h"
#include "paper/setup_parts.h"

namespace laywright {
namespace {

struct Caution {
  const char* head;
  const char* text;
};

constexpr Caution cautions[] = {
    {"In-running nip.",
     "Where fiber meets spool, guide or roller, it draws in fingers, hair, sleeves and gloves. Nothing "
     "loose, and no hand near it while anything turns."},
    {"Entanglement.", "Never hold, guide or wipe running fiber by hand, and never wind it around a hand."},
    {"Broken end.", "It whips. Stay out of the plane of the spool; let the spool come to rest before you go near."},
    {"Glass shards.",
     "They pierce skin and eyes. Wear eye protection, pick scraps up with tape or tweezers, put them "
     "into a closed container, and neither eat nor drink there."},
    {"Guards and stop.", "Run with all guards closed. Try the emergency stop before the first wind of a shift."},
    {"Before reaching in.",
     "Switch off, lock out, and wait for standstill: a clutch or a full spool can still turn."},
    {"Heavy spool.", "Lift it with aids; its flanges carry the pressure of all that is wound inside."},
};

constexpr const char* deference =
    "This sheet is an estimate and no permission to run. The machine's manual, local codes, and people who are "
    "trained "
    "and, where required, licensed decide; where they differ from it, they are right. Scope of standards that may "
    "apply: ISO 12100 risk assessment, ISO 13849-1 safety-related controls, ISO 13850 emergency stop, ISO 13857 "
    "safety "
    "distances, ISO 14119 interlocks of guards, IEC 60204-1 electrical equipment, ISO 11111-1 textile machinery.";

}  // namespace

double draw_cautions(Drawing& page, const Box& band) {
  constexpr double pad = 2.2, gap = 6.0, leading = 1.27;
  const Type type{2.5, false, Align::start, ink};
  const double width = 0.5 * (band.width - 2.0 * pad - gap), line = leading * type.height_mm;
  std::vector<Paragraph> all;
  std::size_t total = 0;
  for (const Caution& caution : cautions) {
    all.push_back(paragraph_of(caution.head, caution.text, width, type));
    total += all.back().lines.size();
  }
  // Two columns, of which the longer is as short as can be.
  std::size_t paragraphs_left = all.size(), longest = total;
  for (std::size_t i = 0, lines = 0; i < all.size(); ++i) {
    lines += all[i].lines.size();
    if (std::max(lines, total - lines) >= longest) continue;
    longest = std::max(lines, total - lines);
    paragraphs_left = i + 1;
  }
  const auto closing = lines_of(deference, band.width - 2.0 * pad, type);
  const double height = 9.2 + line * (static_cast<double>(longest + closing.size()) - 1.0) + pad;
  const double top = band.bottom() - height;
  draw_box(page, {band.left, top, band.width, height}, {}, Pen{ink, 0.6, {}});
  put(page, {band.left + pad, top + 4.6}, "Caution: winding machines injure people", {3.2, true, Align::start, ink});

  Point at{band.left + pad, top + 8.8};
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (i == paragraphs_left) at = {at.x + width + gap, top + 8.8};
    at.y = put_paragraph(page, at, all[i], type, leading);
  }
  const double first = top + 9.6 + line * static_cast<double>(longest);
  (void)put_lines(page, {band.left + pad, first}, closing, type, leading);
  return top;
}

double draw_as_wound(Drawing& page, const Box& band) {
  constexpr double row = 7.2, height = 4.4 + 6.0 * row;
  double top = band.bottom() - height;
  const double result = top;
  top = draw_heading(page, band.left, band.width, top, "As wound: fill in by hand");
  const std::vector<Blank> rows[] = {
      {{"Counter at end"}, {"Turns"}, {"Start time"}, {"End time"}},
      {{"Outer diameter left"}, {"middle"}, {"right"}, {"Tension empty"}, {"full"}},
      {{"Pitch used"}, {"Left stop used"}, {"Right stop used"}, {"Clutch current"}},
      {{"Breaks and splices, at which counter"}},
      {{"What was seen, what was changed"}},
      {{"Set up by / date"}, {"Wound by / date"}, {"Checked by / date"}},
  };
  for (const auto& blanks : rows) {
    top = draw_blanks(page, {band.left, top, band.width, row}, blanks);
  }
  return result;
}

}  // namespace laywright
