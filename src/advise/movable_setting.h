// The settings of a plan as things that can be turned: by how much it makes sense to turn them, and what a person
// says of one that stands wrong.
#pragma once

#include <string>
#include <vector>

#include "advise/late_settings.h"
#include "advise/trial.h"
#include "plan/lay_plan.h"

namespace laywright {

struct MovableSetting {
  struct Part {
    std::string path;
    double sign = 1.0;  // +1: moves with the setting, -1: against it
  };

  std::string words;                   // "the left stop"
  std::string when_too_low;            // what it is when a higher value is right: "too far out"
  std::string when_too_high;           // "too far in"
  std::vector<Part> parts;             // the first is the one that is shown
  std::vector<Change> given;           // set with it: an instant reversal that is to dwell
  double step = 0.0;                   // the smallest move worth trying
  double lowest = 0.0, highest = 0.0;  // moves from where it stands; both 0 or on either side of 0
  bool is_switch = false;              // a choice: `highest` or `lowest` is the one other position
  bool is_flaw = false;                // of machine or spool: nothing would be best
  bool is_usual = false;  // stands where it usually does (verdict/usual_settings.h): hardly what is wrong
  // Decides so little, as a rule, that it is named only where the evidence singles it out: the tension, the side of the start.
  bool wants_evidence = false;
  double first = 0.0;     // the first move of a search, in multiples of which it goes on; 0: `step`
  std::string cure = {};  // of what nobody sets at the machine: what to do about it; else empty
};

// The settings of a plan, in the order of its keys. Flaws of the machine and the spool (lost motion, play, scatter,
// run-out) can only be turned down, and are left out where the plan has none. A setting that the steps of the wind
// change is turned in all of them alike. The side of the start stands among them where it matters, and the tension where the fiber
// rolls and there is `room` for another.
[[nodiscard]] std::vector<MovableSetting> movables_of(const PlanDraft& draft,
                                                      const std::optional<TensionRoom>& room = {});

// Both stops alike, and both in one direction (the whole traverse, sideways).
[[nodiscard]] std::vector<MovableSetting> stop_pairs_of(const PlanDraft& draft);

// The flaws among them.
[[nodiscard]] std::vector<MovableSetting> flaws_of(const PlanDraft& draft);

// False for flaws, and for the fiber's friction: it goes with the fiber.
[[nodiscard]] bool can_be_set(const MovableSetting& movable);

// How far a move goes, as a share of the setting's range in that direction; a flaw, and a dwell, may go all the way to nothing.
[[nodiscard]] double effort_of(const MovableSetting& movable, double move);

[[nodiscard]] std::vector<Change> changes_at(const MovableSetting& movable, const PlanDraft& draft, double move);

// A value of the setting's first part as a person writes it: "0.31 mm", in the unit of the plan.
[[nodiscard]] std::string shown_at(const MovableSetting& movable, const PlanDraft& draft, double value);

// A value of a key in at most four digits, in the unit that the plan has it in.
[[nodiscard]] std::string shown_value(const PlanDraft& draft, const std::string& path, double value);

}  // namespace laywright
