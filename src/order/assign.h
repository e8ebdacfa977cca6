// Which spool takes which piece.
//
// Where no splice is allowed, every piece stays whole. The spools are the fewest that do: first-fit decreasing (the longest
// piece first, each onto the first spool that has room, the roomiest spool first) is held against a search for an assignment
// with fewer spools, which is exhaustive for up to `most_searched` pieces.
//
// Where splices are allowed, the lengths on a spool are joined into one fiber. If that saves a spool, pieces are cut: the
// spools are filled one after the other, and what no longer fits of a piece goes on on the next.
//
// With spools of several sizes the roomiest come first: any assignment to some spools fits onto as many of the roomiest.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace laywright {

inline constexpr std::size_t most_searched = 14;

// Spools of one kind.
struct SpoolRoom {
  double most_mm = 0.0;      // of delivered fiber on one
  std::optional<int> count;  // at hand; none: as many as it takes
};

// A piece, or a part of one.
struct Taken {
  std::size_t piece = 0;
  double from_mm = 0.0, length_mm = 0.0;  // along the piece
};

struct SpoolTakes {
  std::size_t kind = 0;
  std::vector<Taken> taken;  // in the order in which they are wound
};

struct Assignment {
  std::vector<SpoolTakes> spools;
  bool fewest = false;            // it is certain that no fewer spools would do
  std::vector<std::size_t> left;  // pieces that found no spool, or not in full
};

// Precondition: pieces and rooms above nothing, splices not negative. Pieces stay in the order that they have where that is
// possible. Some are left where the spools at hand do not take them all, or a piece fits onto none.
[[nodiscard]] Assignment assign(const std::vector<double>& pieces_mm, const std::vector<SpoolRoom>& kinds,
                                int splices);

}  // namespace laywright
