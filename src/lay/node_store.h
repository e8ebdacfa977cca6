// The nodes of a build, 9 bytes each: x and r on fixed grids of 32 bits, and what carries the node.
//
// Fixed point, not float: the no-penetration rule is 1e-6 d, and a float of 100 mm has a step of 8e-6 mm.
// The lay model rounds each node to the grids before anything is laid on it, so what is stored is what was
// computed with.
#pragma once

#include <cassert>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <utility>
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
  // Precondition: mm is on the grid.
  [[nodiscard]] std::uint32_t nearest(double mm) const {
    const long long step = std::llrint((mm - origin_mm) * steps_per_mm);
    assert(step >= 0 && step <= 0xFFFFFFFFLL);
    return static_cast<std::uint32_t>(step);
  }
};

class NodeStore {
 public:
  // What is kept of the nodes, three columns of one length: how a store travels to another process.
  struct Columns {
    std::vector<std::uint32_t> x, r;
    std::vector<std::uint8_t> flags;
  };

  NodeStore() = default;
  NodeStore(Grid x_grid, Grid r_grid) : x_grid_(x_grid), r_grid_(r_grid) {}
  NodeStore(Grid x_grid, Grid r_grid, Columns columns)
      : x_grid_(x_grid), r_grid_(r_grid), columns_(std::move(columns)) {}

  [[nodiscard]] std::size_t size() const { return columns_.x.size(); }
  [[nodiscard]] double x(std::size_t k) const { return x_grid_.decode(columns_.x[k]); }
  [[nodiscard]] double r(std::size_t k) const { return r_grid_.decode(columns_.r[k]); }
  [[nodiscard]] Support support(std::size_t k) const { return static_cast<Support>(columns_.flags[k] & 0x07); }
  // Carried in part by a turn of its own layer that it has climbed by more than half a diameter.
  [[nodiscard]] bool rides_up(std::size_t k) const { return (columns_.flags[k] & 0x08) != 0; }

  [[nodiscard]] const Grid& x_grid() const { return x_grid_; }
  [[nodiscard]] const Grid& r_grid() const { return r_grid_; }
  [[nodiscard]] const Columns& columns() const { return columns_; }
  [[nodiscard]] std::size_t bytes() const;

  void reserve(std::size_t nodes);
  void truncate(std::size_t nodes);
  void push(std::uint32_t x_code, std::uint32_t r_code, Support support, bool rides_up) {
    columns_.x.push_back(x_code);
    columns_.r.push_back(r_code);
    columns_.flags.push_back(flags(support, rides_up));
  }
  // Where node k lies from now on, and what carries it there.
  void move(std::size_t k, std::uint32_t x_code, std::uint32_t r_code, Support support, bool rides_up) {
    columns_.x[k] = x_code;
    columns_.r[k] = r_code;
    columns_.flags[k] = flags(support, rides_up);
  }

  [[nodiscard]] std::uint64_t hash() const;

 private:
  static std::uint8_t flags(Support support, bool rides_up) {
    return static_cast<std::uint8_t>(static_cast<unsigned>(support) | (rides_up ? 0x08U : 0U));
  }

  Grid x_grid_, r_grid_;
  Columns columns_;
};

}  // namespace laywright
