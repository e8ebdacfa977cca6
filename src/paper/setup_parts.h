// The parts of the set-up sheet, one file each. A part draws itself from a height of the page downward, within margins,
// and returns where it ends.
#pragma once

#include "paper/setup_sheet.h"
#include "paper/typeset.h"

namespace laywright {

inline constexpr double sheet_margin = 12.0;

// What stands on the left and is set on the right, row by row, in a column.
struct Row {
  std::string label, own, other;
  bool tick = false;       // a box to tick when it is set
  std::string brief = "";  // in place of `other` where that is too wide
};
struct RowGroup {
  std::string title;
  std::vector<Row> rows;
};

[[nodiscard]] double draw_row_groups(Drawing& page, const Box& column, const std::vector<RowGroup>& groups);

// A heading with a line under it; returns the top of what follows.
[[nodiscard]] double draw_heading(Drawing& page, double left, double width, double top, const std::string& words);

// A name with a line to write on, and what stands on it already.
struct Blank {
  std::string name, filled_in{};
};

// Side by side over the width.
[[nodiscard]] double draw_blanks(Drawing& page, const Box& row, const std::vector<Blank>& blanks);

// Page one.
[[nodiscard]] double draw_verdict(Drawing& page, const Box& band, const SetupSheet& sheet);
[[nodiscard]] double draw_pictures(Drawing& page, const Box& band, const SetupSheet& sheet);
[[nodiscard]] double draw_settings(Drawing& page, const Box& band, const SetupSheet& sheet);
[[nodiscard]] double draw_steps(Drawing& page, const Box& band, const SetupSheet& sheet);
[[nodiscard]] double draw_machine_warnings(Drawing& page, const Box& band, const SetupSheet& sheet);
// Left out where the band is too low.
[[nodiscard]] double draw_checklist(Drawing& page, const Box& band);
// From the bottom of the band upward; returns its top.
[[nodiscard]] double draw_cautions(Drawing& page, const Box& band);

// Page two.
[[nodiscard]] double draw_checkpoints(Drawing& page, const Box& band, const SetupSheet& sheet);
[[nodiscard]] double draw_charts(Drawing& page, const Box& band, const SetupSheet& sheet);
[[nodiscard]] double draw_expected(Drawing& page, const Box& band, const SetupSheet& sheet);
[[nodiscard]] double draw_findings(Drawing& page, const Box& band, const SetupSheet& sheet);
// From the bottom of the band upward; returns its top.
[[nodiscard]] double draw_as_wound(Drawing& page, const Box& band);

}  // namespace laywright
