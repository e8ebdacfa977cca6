// A fuzzer's bytes as numbers. Bytes that are not there are zero, so that every input means something.
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <span>

namespace laywright::fuzz {

class Bytes {
 public:
  explicit Bytes(std::span<const std::uint8_t> bytes) : bytes_(bytes) {}

  unsigned byte() {
    if (at_ >= bytes_.size()) return 0;
    return bytes_[at_++];
  }
  // Of two bytes, 0 to 1: both ends exactly.
  double share() {
    const unsigned high = byte();
    return static_cast<double>((high << 8U) | byte()) / 65535.0;
  }
  double between(double low, double high) {
    const double at = share();
    return at == 1.0 ? high : low + (high - low) * at;
  }
  // Evenly over the magnitudes. Precondition: low > 0.
  double magnitude(double low, double high) {
    const double at = share();
    if (at == 0.0 || at == 1.0) return at == 0.0 ? low : high;
    return low * std::exp(at * std::log(high / low));
  }
  // True for one byte in `times`.
  bool once_in(unsigned times) { return byte() % times == times - 1; }
  unsigned one_of(unsigned count) { return byte() % count; }

 private:
  std::span<const std::uint8_t> bytes_;
  std::size_t at_ = 0;
};

}  // namespace laywright::fuzz
