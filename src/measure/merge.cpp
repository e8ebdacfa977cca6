#include "measure/merge.h"

#include <algorithm>
#include <utility>

namespace laywright {

void Cluster::keep_largest_places() {
  std::sort(places.begin(), places.end(), [](const FindingPlace& a, const FindingPlace& b) {
    return a.size_mm != b.size_mm ? a.size_mm > b.size_mm : a.node < b.node;
  });
  if (places.size() > Finding::most_places) places.resize(Finding::most_places);
}

namespace {

void absorb(Cluster& into, const Cluster& other) {
  Occurrence& a = into.extent;
  const Occurrence& b = other.extent;
  if (b.size_mm > a.size_mm) {
    a.size_mm = b.size_mm;
    a.worst_node = b.worst_node;
    a.detail = b.detail;
    into.worst_layer = other.worst_layer;
  }
  a.layer = std::min(a.layer, b.layer);
  a.first_node = std::min(a.first_node, b.first_node);
  a.end_node = std::max(a.end_node, b.end_node);
  a.x_min_mm = std::min(a.x_min_mm, b.x_min_mm);
  a.x_max_mm = std::max(a.x_max_mm, b.x_max_mm);
  a.arc = covering(a.arc, b.arc);
  into.last_layer = std::max(into.last_layer, other.last_layer);
  into.count += other.count;
  into.places.insert(into.places.end(), other.places.begin(), other.places.end());
  if (into.places.size() > 2 * Finding::most_places) into.keep_largest_places();
}

}  // namespace

bool Merger::near(const Cluster& a, const Cluster& b) const {
  const Occurrence& p = a.extent;
  const Occurrence& q = b.extent;
  return q.layer - a.last_layer <= nearness_.layers && p.layer - b.last_layer <= nearness_.layers &&
         q.x_min_mm - p.x_max_mm <= nearness_.x_mm && p.x_min_mm - q.x_max_mm <= nearness_.x_mm &&
         apart_deg(p.arc, q.arc) <= nearness_.angle_deg;
}

void Merger::add(const Occurrence& occurrence) {
  const Cluster single(occurrence);
  // The latest first: that is where the next one is likely to belong.
  for (auto cluster = clusters_.rbegin(); cluster != clusters_.rend(); ++cluster) {
    if (near(*cluster, single)) {
      absorb(*cluster, single);
      return;
    }
  }
  clusters_.push_back(single);
  if (clusters_.size() > most_open) {
    merge_all();
    while (clusters_.size() > most_open) widen();
  }
}

void Merger::merge_all() {
  bool merged = true;
  while (merged) {
    merged = false;
    for (std::size_t i = 0; i < clusters_.size(); ++i) {
      for (std::size_t j = clusters_.size(); j-- > i + 1;) {
        if (!near(clusters_[i], clusters_[j])) continue;
        absorb(clusters_[i], clusters_[j]);
        clusters_.erase(clusters_.begin() + static_cast<std::ptrdiff_t>(j));
        merged = true;
      }
    }
  }
}

void Merger::widen() {
  nearness_.x_mm *= 2.0;
  nearness_.angle_deg *= 2.0;
  nearness_.layers *= 2;
  merge_all();
}

std::vector<Cluster> Merger::finish() {
  merge_all();
  while (clusters_.size() > most_clusters) widen();
  for (Cluster& cluster : clusters_) cluster.keep_largest_places();
  std::sort(clusters_.begin(), clusters_.end(),
            [](const Cluster& a, const Cluster& b) { return a.extent.first_node < b.extent.first_node; });
  return std::move(clusters_);
}

}  // namespace laywright
