// The nodes of a build, 9 bytes each: x and r on fixed grids of 32 bits, and what carries the node.
//
// Fixed point, not float: the no-penetration rule is 1e-6 d, and a float of 100 mm has a step of 8e-6 mm.
// The lay model rounds each node to the grids before anything is laid on it, so what is stored is what was
// computed with.
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace laywright {

enum class Support : std::uint8_t;

// A range [origin, origin + 2^32 step], mm.
struct Grid {
  double origin_mm = 0.0;
  double step_mm = 1.0;
  double steps_per_mm = 1.0;

  [[nodiscard]] static Grid over(double low_mm, double high_mm) {
    const double step = (high_mm - low_mm) / 4294967295.0;
    return {low_mm, step, 1.0 / step};
  }
  [[nodiscard]] double decode(std::uint32_t code) const { return origin_mm + step_mm * code; }
  [[nodiscard]] std::uint32_t nearest(double mm) const {
    return static_cast<std::uint32_t>(std::llrint((mm - origin_mm) * steps_per_mm));
  }
};

class NodeStore {
 public:
  NodeStore() = default;
  NodeStore(Grid x_grid, Grid r_grid) : x_grid_(x_grid), r_grid_(r_grid) {}

  [[nodiscard]] std::size_t size() const { return x_.size(); }
  [[nodiscard]] double x(std::size_t k) const { return x_grid_.decode(x_[k]); }
  [[nodiscard]] double r(std::size_t k) const { return r_grid_.decode(r_[k]); }
  [[nodiscard]] Support support(std::size_t k) const { return static_cast<Support>(flags_[k] & 0x07); }
  // Carried in part by a turn of its own layer that it has climbed by more than half a diameter.
  [[nodiscard]] bool rides_up(std::size_t k) const { return (flags_[k] & 0x08) != 0; }

  [[nodiscard]] const Grid& x_grid() const { return x_grid_; }
  [[nodiscard]] const Grid& r_grid() const { return r_grid_; }
  [[nodiscard]] std::size_t bytes() const;

  void reserve(std::size_t nodes);
  void truncate(std::size_t nodes);
  void push(std::uint32_t x_code, std::uint32_t r_code, Support support, bool rides_up) {
    x_.push_back(x_code);
    r_.push_back(r_code);
    flags_.push_back(static_cast<std::uint8_t>(static_cast<unsigned>(support) | (rides_up ? 0x08U : 0U)));
  }

  [[nodiscard]] std::uint64_t hash() const;

 private:
  Grid x_grid_, r_grid_;
  std::vector<std::uint32_t> x_, r_;
  std::vector<std::uint8_t> flags_;
};

}  // namespace laywright
