// FNV-1a, 64 bits: a stable fingerprint of bytes, the same on every machine. Not for security.
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstring>

namespace laywright {

class Hash {
 public:
  void add(const void* bytes, std::size_t count) {
    const auto* p = static_cast<const unsigned char*>(bytes);
    for (std::size_t i = 0; i < count; ++i) value_ = (value_ ^ p[i]) * 1099511628211ULL;
  }
  // Integers are added low byte first, whatever the machine's order.
  void add(std::uint64_t number) {
    for (int i = 0; i < 8; ++i) value_ = (value_ ^ ((number >> (8 * i)) & 0xFFU)) * 1099511628211ULL;
  }
  void add(double number) {
    std::uint64_t bits = 0;
    std::memcpy(&bits, &number, sizeof bits);
    add(bits);
  }
  [[nodiscard]] std::uint64_t value() const { return value_; }

 private:
  std::uint64_t value_ = 14695981039346656037ULL;
};

}  // namespace laywright
