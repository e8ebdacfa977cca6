// What a search for better settings may turn, and how finely the machine can set it.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "plan/lay_plan.h"

namespace laywright {

struct SearchableSetting {
  std::string path;   // of the plan; "stop drift" for stops that move outward with every layer
  std::string words;  // "pitch"
  double low = 0.0, high = 0.0, step = 0.0;
  double now = 0.0;  // where the plan has it
  std::function<void(PlanDraft&, double)> set;
  bool late = false;       // turned only where all others leave something (late_settings.h); these stand last
  bool is_switch = false;  // a choice: `low` and `high` are its two positions

  // The nearest position that the machine can set, within the range; where the plan stands is one.
  [[nodiscard]] double nearest(double value) const;
};

// What a person says of a key; what is not said keeps its default.
struct SearchRequest {
  std::string path;
  std::optional<double> low, high, step;
  bool keep = false;  // not to be turned
};

// Pitch, both stops, the turns of dwell or ramp (of an instant reversal a dwell that is turned on), the free length where it is
// long, and, where the flanges open and no steps are in the plan, the drift of the stops from layer to layer, which becomes
// steps of the wind; then the late ones, side of the start and tension (late_settings.h); any other number of the plan that a
// request gives a range to. Defaults: pitch from 1.01 to 1.25 d (within a
// tenth of it where it is 3 d or more); stops within 3 d, or a quarter pitch, and the lost motion, of where the fiber turns back
// at the flange (d/2 from the flange less the way L tan(alpha) ln 2 that it turns back short of the guide's stop); no more than
// 2 turns at a stop; a quarter of a long free length. Where the plan stands is always in the range, but for a tension that is not
// good; the tension's own range is empty until the plan has been laid.
// Errors: a request for a key that is none, or has no range to search.
[[nodiscard]] Result<std::vector<SearchableSetting>> searchables_of(const PlanDraft& draft,
                                                                    const std::vector<SearchRequest>& requests,
                                                                    bool drift);

// Where the guide should turn back so that the fiber reaches the flange: inward from its face, mm.
[[nodiscard]] double ideal_stop_mm(const PlanDraft& draft, double pitch_mm);

// Where a setting usually is best, with all else as in the draft; none where nothing is known of it.
[[nodiscard]] std::optional<double> usual_value(const PlanDraft& draft, std::string_view path);

[[nodiscard]] bool is_stop(const SearchableSetting& searchable);

inline constexpr const char* drift_path = "stop drift";

[[nodiscard]] PlanDraft set_searchables(PlanDraft draft, const std::vector<SearchableSetting>& searchables,
                                        const std::vector<double>& values);

}  // namespace laywright
