// Rows of a large table as text, quickly: numbers with a fixed count of decimals.
#pragma once

#include <cstddef>
#include <cstdint>
#include <ostream>
#include <string>
#include <string_view>

namespace laywright {

class TableRows {
 public:
  void add_text(std::string_view text) { bytes_ += text; }

  // As printf("%.*f,") does, but for ties, which here go away from zero, and for values beyond 9e12, where digits after
  // the point would mean nothing. Precondition: finite, 0 to 6 decimals.
  void add_decimal(double value, int decimals);

  void add_whole(std::uint64_t value);  // and a comma
  void add_last(std::string_view text) {
    bytes_ += text;
    bytes_ += '\n';
  }

  [[nodiscard]] std::size_t bytes() const { return bytes_.size(); }

  // Passes on what is held, and holds nothing then.
  void write(std::ostream& out) {
    out.write(bytes_.data(), static_cast<std::streamsize>(bytes_.size()));
    bytes_.clear();
  }

 private:
  std::string bytes_;
};

}  // namespace laywright
