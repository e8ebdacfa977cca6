#include "scene/lit.h"

#include <algorithm>
#include <utility>

#include "scene/marks.h"

namespace laywright {

namespace {

constexpr std::uint8_t code_of(FindingKind kind) { return static_cast<std::uint8_t>(static_cast<int>(kind) + 1); }

class Lighter {
 public:
  Lighter(const SceneSource& source, const Shell& shell, bool gaps, bool ride_ups)
      : source_(source),
        shell_(shell),
        gaps_(gaps),
        ride_ups_(ride_ups),
        least_gap_(source.plan().limits().gap_d * source.d()),
        lit_(shell.node.size(), 0) {}

  void light_row(std::size_t row) {
    over_.clear();
    const std::size_t begin = shell_.index(row, 0);
    for (std::size_t c = 0; c < shell_.grid.columns;) {
      const std::uint32_t node = shell_.node[begin + c];
      std::size_t end = c + 1;
      while (end < shell_.grid.columns && shell_.node[begin + end] == node) ++end;
      if (node != no_node) light_run(begin, node, c, end);
      c = end;
    }
  }

  std::vector<std::uint8_t> finish() { return std::move(lit_); }

 private:
  struct Turn {
    std::size_t stroke = 0;
    double x = 0.0;
    std::size_t end = 0;  // one past its last column
  };

  void light_run(std::size_t begin, std::uint32_t node, std::size_t first, std::size_t end) {
    if (ride_ups_ && source_.build().nodes.rides_up(node)) light(begin + first, begin + end, FindingKind::ride_up);
    if (!gaps_) return;
    const Turn turn{source_.stroke_of(node), source_.build().nodes.x(node), end};
    // What is laid between two turns of a layer was laid before them: going to the right, it stands on the stack
    // between the two.
    while (!over_.empty() && over_.back().stroke < turn.stroke) over_.pop_back();
    if (!over_.empty() && over_.back().stroke == turn.stroke) {
      const Turn& neighbour = over_.back();
      const bool wide = turn.x - neighbour.x - source_.d() > least_gap_;
      if (wide) light(begin + neighbour.end, begin + first, FindingKind::gap);
      over_.pop_back();
    }
    over_.push_back(turn);
  }

  void light(std::size_t from, std::size_t to, FindingKind kind) {
    for (std::size_t i = from; i < to; ++i) lit_[i] = code_of(kind);
  }

  const SceneSource& source_;
  const Shell& shell_;
  bool gaps_, ride_ups_;
  double least_gap_;
  std::vector<std::uint8_t> lit_;
  std::vector<Turn> over_;  // turns to the left that may have a neighbour to come; strokes fall from first to last
};

}  // namespace

std::vector<std::uint8_t> lit_texels(const SceneSource& source, const View& view, const Shell& shell) {
  const std::vector<Mark> marks = make_marks(source, view);
  const auto any = [&](FindingKind kind) {
    return std::any_of(marks.begin(), marks.end(), [kind](const Mark& mark) { return mark.kind == kind; });
  };
  Lighter lighter(source, shell, any(FindingKind::gap), any(FindingKind::ride_up));
  if (any(FindingKind::gap) || any(FindingKind::ride_up)) {
    for (std::size_t row = 0; row < shell.grid.rows; ++row) lighter.light_row(row);
  }
  return lighter.finish();
}

}  // namespace laywright
