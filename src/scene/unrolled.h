// A shell unrolled into a flat picture: x to the right, once around the spool upward.
#pragma once

#include "scene/shell.h"

namespace laywright {

struct UnrolledShell {
  std::size_t columns = 0, rows = 0;
  std::vector<Rgba> pixels;  // index = row * columns + column; row 0 is the start of the wind

  [[nodiscard]] const Rgba& at(std::size_t row, std::size_t column) const { return pixels[row * columns + column]; }
};

// Colours are lit by how the fiber's round leans and how open it lies, so that turns and crossings show; the bare
// barrel is grey. Columns that are more than wanted are averaged.
[[nodiscard]] UnrolledShell unroll(const Shell& shell, std::size_t most_columns);

}  // namespace laywright
