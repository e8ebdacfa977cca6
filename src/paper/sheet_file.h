// The set-up sheet as a file: what is written goes by the name's ending.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "paper/drawing.h"

namespace laywright {

enum class SheetFormat { pdf, svg, png };

// By ".pdf", ".svg" or ".png", in letters of any case; none for another name.
[[nodiscard]] std::optional<SheetFormat> sheet_format_of(const std::string& file);

// A PDF holds all pages; SVG and PNG hold one, 1 = the first. Empty when there is too little memory.
[[nodiscard]] std::string sheet_bytes(SheetFormat format, const std::vector<Drawing>& pages, int page);

}  // namespace laywright
