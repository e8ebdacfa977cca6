// Lays a plan in the page's worker, in the steps that the window has, too.
#pragma once

#include <cstdint>
#include <vector>

#include "desk/passes.h"
#include "lay/build.h"

namespace laywright {

class Winder {
 public:
  // `cost` as learned so far.
  Winder(const Plan& plan, std::uint64_t seed, const LayCost& cost);

  [[nodiscard]] std::size_t passes() const { return passes_.size(); }
  [[nodiscard]] const Pass& pass(std::size_t index) const { return passes_.at(index); }
  [[nodiscard]] const LayCost& cost() const { return cost_; }

  // Lays and measures. What came of it stays until the next call.
  void wind(std::size_t index);
  [[nodiscard]] const Build& build() const { return build_; }
  [[nodiscard]] const std::vector<std::uint8_t>& bytes() const { return bytes_; }  // of wound_bytes.h

 private:
  Plan plan_;
  std::uint64_t seed_;
  LayCost cost_;
  std::vector<Pass> passes_;
  Build build_;
  std::vector<std::uint8_t> bytes_;
};

}  // namespace laywright
