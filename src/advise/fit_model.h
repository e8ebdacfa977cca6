// What the lay model says that one would have read on a spool, for settings as they may have been.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "advise/as_wound.h"
#include "jobs/parallel.h"
#include "lay/lay.h"

namespace laywright {

// Something that is not exactly known of a wind.
struct Unknown {
  std::string path;       // key of the plan
  std::string words;      // "pitch"
  double believed = 0.0;  // as the plan has it
  double belief = 0.0;    // one sigma of how far it may be off
  double least = 0.0, most = 0.0;
};

// A reading that can be compared: what was measured, and how exactly.
struct Observation {
  std::string place, what;  // "layer 3", "diameter left"
  double measured = 0.0;
  double sigma = 0.0;
  bool is_turns = false;    // else a length, mm
  std::size_t reading = 0;  // of the table

  [[nodiscard]] std::string words() const { return place + ", " + what; }
};

struct ReadingErrors {
  double turns_share = 0.01;    // one sigma of turns, as a share of a layer's turns
  double length_share = 0.001;  // of lengths
  double diameter_mm = 0.0;     // of diameters; 0: a tenth of the fiber's diameter
  double width_mm = 0.0;        // of a layer's width; 0: a quarter of the fiber's diameter
};

// In the order in which predict() gives its values.
[[nodiscard]] std::vector<Observation> observations_of(const Plan& plan, const AsWound& wound,
                                                       const ReadingErrors& errors);

class FitModel {
 public:
  FitModel(const Plan& plan, const AsWound& wound, const std::vector<Unknown>& unknowns,
           const LaySettings& settings);

  // The plan with these values of the unknowns, each kept within its range. Steps of the wind have what is off, too: a stop as
  // much, a pitch in the same proportion.
  [[nodiscard]] PlanDraft draft_at(const std::vector<double>& values) const;

  // The readings at several points at once; none where it cannot be laid, or stopped.
  [[nodiscard]] std::vector<std::optional<std::vector<double>>> predict(
      const std::vector<std::vector<double>>& points, int threads, const Stretch& stretch) const;

  // The same of so many draws of the plan as it is (draws.h).
  [[nodiscard]] std::vector<std::optional<std::vector<double>>> predict_draws(int draws, int threads,
                                                                              const Stretch& stretch) const;

  // Where the last reading was taken, in a wind of the plan with these values; none where it cannot be laid, or stopped.
  struct Place {
    double turn = 0.0, length_mm = 0.0;
    int layer = 1;  // that is being laid there
  };
  [[nodiscard]] std::optional<Place> last_place(const std::vector<double>& values, Progress& progress) const;

 private:
  struct Laid;
  [[nodiscard]] std::optional<Laid> laid(const PlanDraft& draft, const LaySettings& settings,
                                         Progress& progress) const;
  [[nodiscard]] std::optional<std::vector<double>> readings_of(const PlanDraft& draft, const LaySettings& settings,
                                                               Progress& progress) const;

  const Plan& plan_;
  const AsWound& wound_;
  const std::vector<Unknown>& unknowns_;
  LaySettings settings_;
  double turns_ = 0.0;  // to lay, so that all readings are passed
};

}  // namespace laywright
