// A square matrix that is zero beyond `half` places from its diagonal, and the solution of its equations by
// elimination without pivoting (for matrices dominated by their diagonal).
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace laywright {

class BandMatrix {
 public:
  // All zeros; keeps its memory from one use to the next.
  void reset(std::size_t size, std::size_t half) {
    size_ = size;
    half_ = half;
    entries_.assign(size * (2 * half + 1), 0.0);
  }
  // Precondition: |row - column| <= half.
  double& at(std::size_t row, std::size_t column) { return entries_[row * (2 * half_ + 1) + half_ + column - row]; }

  // Solves in place of the right-hand side; the matrix is used up. False when a pivot is too small to trust.
  [[nodiscard]] bool solve(std::vector<double>& right) {
    for (std::size_t k = 0; k < size_; ++k) {
      const double pivot = at(k, k);
      if (!(std::abs(pivot) > 1e-9)) return false;
      const std::size_t end = std::min(size_, k + half_ + 1);
      for (std::size_t row = k + 1; row < end; ++row) {
        const double factor = at(row, k) / pivot;
        if (factor == 0.0) continue;
        for (std::size_t column = k + 1; column < end; ++column) at(row, column) -= factor * at(k, column);
        right[row] -= factor * right[k];
      }
    }
    for (std::size_t k = size_; k-- > 0;) {
      const std::size_t end = std::min(size_, k + half_ + 1);
      for (std::size_t column = k + 1; column < end; ++column) right[k] -= at(k, column) * right[column];
      right[k] /= at(k, k);
    }
    return true;
  }

 private:
  std::size_t size_ = 0, half_ = 0;
  std::vector<double> entries_;
};

}  // namespace laywright
