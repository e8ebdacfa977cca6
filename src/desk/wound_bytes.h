// A build and its measurements on their way between two processes that share no memory: the columns of the nodes as
// they stand, and everything else as one block of bytes (CBOR, RFC 8949), numbers to the last bit. Not a file format:
// both ends are the same program.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "lay/build.h"
#include "measure/measurements.h"

namespace laywright {

// All but the columns.
[[nodiscard]] std::vector<std::uint8_t> to_bytes(const Build& build, const Measurements& measurements);

struct ReceivedWound {
  Build build;
  Measurements measurements;
};

// The inverse, with the columns of the same build. None when the bytes are not such a block, or it and the columns do
// not belong together.
[[nodiscard]] std::optional<ReceivedWound> from_bytes(const std::uint8_t* bytes, std::size_t count,
                                                      NodeStore::Columns columns);

}  // namespace laywright
