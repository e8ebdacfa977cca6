#include "measure/runs.h"

#include <algorithm>
#include <utility>

namespace laywright {

Arc arc_of_nodes(std::size_t first, std::size_t end, std::size_t stations) {
  const double per_node = 360.0 / static_cast<double>(stations);
  return arc_between(static_cast<double>(first % stations) * per_node,
                     static_cast<double>(first % stations + (end - first)) * per_node);
}

Runs::Runs(const StrokeView& view, FindingKind kind)
    : view_(view),
      kind_(kind),
      joined_over_(static_cast<std::size_t>(joined_over_deg / 360.0 * static_cast<double>(view.stations()))) {}

void Runs::add(std::size_t node, double size_mm, double x_min_mm, double x_max_mm) {
  if (open_ && node > open_->end_node + joined_over_) close();
  if (!open_) {
    open_.emplace();
    open_->kind = kind_;
    open_->layer = view_.layer();
    open_->first_node = node;
    open_->x_min_mm = x_min_mm;
    open_->x_max_mm = x_max_mm;
    open_->size_mm = size_mm;
    open_->worst_node = node;
  }
  open_->end_node = node + 1;
  open_->x_min_mm = std::min(open_->x_min_mm, x_min_mm);
  open_->x_max_mm = std::max(open_->x_max_mm, x_max_mm);
  if (size_mm > open_->size_mm) {
    open_->size_mm = size_mm;
    open_->worst_node = node;
  }
}

void Runs::close() {
  open_->arc = arc_of_nodes(open_->first_node, open_->end_node, view_.stations());
  done_.push_back(*open_);
  open_.reset();
}

std::vector<Occurrence> Runs::finish() {
  if (open_) close();
  return std::move(done_);
}

}  // namespace laywright
