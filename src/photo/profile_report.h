// What a photograph shows beside what the plan has, as text, JSON and CSV.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "measure/measurements.h"
#include "photo/edge_profile.h"
#include "photo/zone_diameters.h"
#include "plan/lay_plan.h"

namespace laywright {

// What the plan has at the moment of the picture.
struct PlannedThen {
  std::string when;                                  // "at the end of the wind", "when layer 3 has ended"
  std::optional<std::array<double, 3>> diameter_mm;  // left, middle, right; none where the plan has none there
  std::optional<UnfinishedLayer> unfinished;         // that lies by then, and is in the diameters
  // Twice the mean crest radius round the spool along the axis, at the end of the wind; empty: not then, or not asked for.
  std::vector<double> x_mm, outline_mm;
};

// What it rests on, in sentences.
[[nodiscard]] std::string estimate_words();

// The layer that is not whole by then, in a sentence; empty where all are.
[[nodiscard]] std::string last_layer_words(const PlannedThen& planned);

// What reads lower for turns that are blurred into one line, in a sentence; empty where the picture shows each turn.
[[nodiscard]] std::string blurred_words(const Plan& plan, const EdgeProfile& profile);

// The lens: what it bends, and what that does; in words for a list.
[[nodiscard]] std::string lens_words(const PhotoFound& found);

[[nodiscard]] std::string profile_text(const Plan& plan, const EdgeProfile& profile, const PlannedThen& planned);

// The document "lay-profile 1".
[[nodiscard]] std::string profile_json(const Plan& plan, const EdgeProfile& profile, const PlannedThen& planned);

// x_mm, diameter_mm, sigma_mm, planned_mm: the plan's outline there, empty without one.
[[nodiscard]] std::string profile_csv(const EdgeProfile& profile, const PlannedThen& planned);

}  // namespace laywright
