// A square matrix that is zero beyond `half` places from its diagonal, and the solution of its equations by
// elimination without pivoting (for matrices dominated by their diagonal).
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <type_traits>
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
    // Of rolling steps, which most of them are, and of steps of a string that does not bend: a width that is known
    // beforehand is quicker.
    if (half_ == 1) return eliminate(std::integral_constant<std::size_t, 1>{}, right);
    if (half_ == 3) return eliminate(std::integral_constant<std::size_t, 3>{}, right);
    return eliminate(half_, right);
  }

 private:
  template <typename Half>
  bool eliminate(Half half, std::vector<double>& right) {
    const std::size_t width = 2 * half + 1;
    for (std::size_t k = 0; k < size_; ++k) {
      const double* top = &entries_[k * width + half];
      if (!(std::abs(*top) > 1e-9)) return false;
      const std::size_t below = std::min<std::size_t>(size_ - k, half + 1);
      for (std::size_t i = 1; i < below; ++i) {
        double* row = &entries_[(k + i) * width + half - i];
        if (*row == 0.0) continue;
        const double factor = *row / *top;
        for (std::size_t j = 1; j <= half; ++j) row[j] -= factor * top[j];
        right[k + i] -= factor * right[k];
      }
    }
    for (std::size_t k = size_; k-- > 0;) {
      const double* row = &entries_[k * width + half];
      const std::size_t beside = std::min<std::size_t>(size_ - k, half + 1);
      double sum = right[k];
      for (std::size_t j = 1; j < beside; ++j) sum -= row[j] * right[k + j];
      right[k] = sum / *row;
    }
    return true;
  }

  std::size_t size_ = 0, half_ = 0;
  std::vector<double> entries_;
};

}  // namespace laywright
