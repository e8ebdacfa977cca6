#include "order/assign.h"

#include <algorithm>
#include <numeric>

namespace laywright {
namespace {

// Lengths are sums of what people write: a nanometre is rounding.
constexpr double rounding_mm = 1e-6;

using Indices = std::vector<std::size_t>;

// One spool at hand.
struct Bin {
  std::size_t kind;
  double room_mm;
};

// The roomiest first; no more than there can be use for.
std::vector<Bin> bins_of(const std::vector<SpoolRoom>& kinds, std::size_t most) {
  Indices order(kinds.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return kinds[a].most_mm > kinds[b].most_mm; });
  std::vector<Bin> bins;
  for (const std::size_t kind : order) {
    const std::size_t count = kinds[kind].count ? static_cast<std::size_t>(*kinds[kind].count) : most;
    for (std::size_t i = 0; i < count && bins.size() < most; ++i) bins.push_back({kind, kinds[kind].most_mm});
  }
  return bins;
}

// How many spools it takes at least, by length and by the count of lengths that one may have; one more than there are where
// all of them are too few.
std::size_t least_bins(const std::vector<double>& pieces, const std::vector<Bin>& bins, std::size_t lengths) {
  const double total = std::accumulate(pieces.begin(), pieces.end(), 0.0);
  double room = 0.0;
  std::size_t count = 0;
  for (const Bin& bin : bins) {
    room += bin.room_mm;
    ++count;
    const bool few_enough = lengths == 0 || count * lengths >= pieces.size();
    if (room + rounding_mm >= total && few_enough) return count;
  }
  return bins.size() + 1;
}

// Pieces that stay whole: which bin has which piece. Piece by piece from the longest on.
class WholePieces {
 public:
  // `lengths` on a bin at most; 0: any number.
  WholePieces(const std::vector<double>& pieces, const std::vector<Bin>& bins, std::size_t lengths)
      : pieces_(pieces), bins_(bins), lengths_(lengths), order_(pieces.size()) {
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    std::stable_sort(order_.begin(), order_.end(),
                     [&](std::size_t a, std::size_t b) { return pieces[a] > pieces[b]; });
    clear(bins.size());
  }

  // Which pieces found no place.
  Indices first_fit() {
    Indices left;
    for (const std::size_t piece : order_) {
      std::size_t bin = 0;
      while (bin < room_.size() && !fits(piece, bin)) ++bin;
      if (bin == room_.size()) {
        left.push_back(piece);
      } else {
        put(piece, bin);
      }
    }
    return left;
  }

  enum class Found { yes, no, gave_up };
  // An assignment to the first so many bins, by trying all that differ.
  Found search(std::size_t bins) {
    clear(bins);
    steps_ = 0;
    const Found found = search_from(0);
    return found;
  }

  [[nodiscard]] const std::vector<Indices>& on() const { return on_; }
  [[nodiscard]] std::size_t used() const {
    return static_cast<std::size_t>(
        std::count_if(on_.begin(), on_.end(), [](const Indices& pieces) { return !pieces.empty(); }));
  }

 private:
  void clear(std::size_t bins) {
    on_.assign(bins, {});
    room_.clear();
    for (std::size_t i = 0; i < bins; ++i) room_.push_back(bins_[i].room_mm);
  }
  [[nodiscard]] bool fits(std::size_t piece, std::size_t bin) const {
    return pieces_[piece] <= room_[bin] + rounding_mm && (lengths_ == 0 || on_[bin].size() < lengths_);
  }
  void put(std::size_t piece, std::size_t bin) {
    on_[bin].push_back(piece);
    room_[bin] -= pieces_[piece];
  }

  Found search_from(std::size_t at) {
    if (at == order_.size()) return Found::yes;
    constexpr long most_steps = 2'000'000;
    if (++steps_ > most_steps) return Found::gave_up;
    const std::size_t piece = order_[at];
    for (std::size_t bin = 0; bin < room_.size(); ++bin) {
      if (!fits(piece, bin) || like_an_earlier(bin)) continue;
      const double before = room_[bin];
      put(piece, bin);
      const Found found = search_from(at + 1);
      if (found != Found::no) return found;
      on_[bin].pop_back();
      room_[bin] = before;
    }
    return Found::no;
  }
  // What holds for one of two bins with the same room and count holds for the other.
  [[nodiscard]] bool like_an_earlier(std::size_t bin) const {
    for (std::size_t i = 0; i < bin; ++i)
      if (room_[i] == room_[bin] && on_[i].size() == on_[bin].size()) return true;
    return false;
  }

  const std::vector<double>& pieces_;
  const std::vector<Bin>& bins_;
  std::size_t lengths_;
  Indices order_;
  std::vector<double> room_;
  std::vector<Indices> on_;
  long steps_ = 0;
};

Assignment whole_pieces(const std::vector<double>& pieces, const std::vector<Bin>& bins, std::size_t lengths) {
  WholePieces packing(pieces, bins, lengths);
  Assignment result;
  result.left = packing.first_fit();
  std::vector<Indices> best = packing.on();
  const std::size_t least = least_bins(pieces, bins, lengths);
  std::size_t used = result.left.empty() ? packing.used() : bins.size() + 1;
  result.fewest = used == least;
  if (!result.fewest && pieces.size() <= most_searched) {
    result.fewest = true;  // unless the search gives up
    for (std::size_t count = least; count < used; ++count) {
      const WholePieces::Found found = packing.search(count);
      if (found == WholePieces::Found::no) continue;
      if (found == WholePieces::Found::gave_up) {
        result.fewest = false;
        continue;
      }
      used = count;
      best = packing.on();
      result.left.clear();
    }
  }
  for (std::size_t bin = 0; bin < best.size(); ++bin) {
    if (best[bin].empty()) continue;
    std::sort(best[bin].begin(), best[bin].end());
    SpoolTakes& takes = result.spools.emplace_back();
    takes.kind = bins[bin].kind;
    for (const std::size_t piece : best[bin]) takes.taken.push_back({piece, 0.0, pieces[piece]});
  }
  std::sort(result.left.begin(), result.left.end());
  return result;
}

// Fills bin after bin with the pieces in that order, cutting what does not fit.
Assignment cut_pieces(const std::vector<double>& pieces, const Indices& order, const std::vector<Bin>& bins,
                      std::size_t lengths) {
  Assignment result;
  std::size_t at = 0;
  double from = 0.0;
  for (const Bin& bin : bins) {
    if (at == order.size()) break;
    SpoolTakes takes{bin.kind, {}};
    double room = bin.room_mm;
    while (at < order.size() && takes.taken.size() < lengths && room > rounding_mm) {
      const double rest = pieces[order[at]] - from;
      const bool all = rest <= room + rounding_mm;
      const double part = all ? rest : room;
      takes.taken.push_back({order[at], from, part});
      room -= part;
      from = all ? 0.0 : from + part;
      if (all) ++at;
    }
    result.spools.push_back(std::move(takes));
  }
  for (; at < order.size(); ++at) result.left.push_back(order[at]);
  std::sort(result.left.begin(), result.left.end());
  return result;
}

// Orders that are tried where pieces may be cut: as they are, the longest first, and long and short by turns, which fills
// spools that may have few lengths.
std::vector<Indices> orders_of(const std::vector<double>& pieces) {
  Indices given(pieces.size());
  std::iota(given.begin(), given.end(), std::size_t{0});
  Indices falling = given;
  std::stable_sort(falling.begin(), falling.end(),
                   [&](std::size_t a, std::size_t b) { return pieces[a] > pieces[b]; });
  Indices by_turns;
  for (std::size_t low = 0, high = falling.size(); low < high;) {
    by_turns.push_back(falling[low++]);
    if (low < high) by_turns.push_back(falling[--high]);
  }
  return {given, falling, by_turns};
}

bool better(const Assignment& one, const Assignment& other) {
  if (one.left.size() != other.left.size()) return one.left.size() < other.left.size();
  return one.spools.size() < other.spools.size();
}

}  // namespace

Assignment assign(const std::vector<double>& pieces_mm, const std::vector<SpoolRoom>& kinds, int splices) {
  if (splices == 0) return whole_pieces(pieces_mm, bins_of(kinds, pieces_mm.size()), 0);
  const std::size_t lengths = static_cast<std::size_t>(splices) + 1;
  const double total = std::accumulate(pieces_mm.begin(), pieces_mm.end(), 0.0);
  double least_room = total;
  for (const SpoolRoom& kind : kinds) least_room = std::min(least_room, kind.most_mm);
  // Each spool but the last is filled, or has at least two pieces' ends.
  constexpr double most_bins = 10'000.0;
  const auto most = static_cast<std::size_t>(std::min(most_bins, total / least_room + 1.0)) + pieces_mm.size();
  const std::vector<Bin> bins = bins_of(kinds, most);
  Assignment best = whole_pieces(pieces_mm, bins, lengths);
  for (const Indices& order : orders_of(pieces_mm)) {
    Assignment cut = cut_pieces(pieces_mm, order, bins, lengths);
    if (better(cut, best)) best = std::move(cut);
  }
  best.fewest = best.left.empty() && best.spools.size() == least_bins(pieces_mm, bins, lengths);
  return best;
}

}  // namespace laywright
