// What a person asks of the advice, and how the plan stands to what was answered: as values.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace laywright {

enum class AdviceKind { cause, better, study, draws, follow };

struct BetterRequest {
  std::vector<std::string> keep;  // keys that are not to be turned
  bool drift = false;             // the stops may move outward from layer to layer
};

// As typed: a bare number counts in the unit that the field is shown in.
struct StudyAxisRequest {
  std::string path;
  std::string from, to;
  int count = 9;
};

struct StudyRequest {
  std::vector<StudyAxisRequest> axes;  // one or two
  bool fine = false;                   // with all stations, as the build is laid; else half of them
};

// How the plan, as it is now, stands to an answer.
struct Standing {
  bool stale = false;              // it was changed otherwise since: what was said is not of it
  std::optional<std::size_t> set;  // the option that it is set to
};

}  // namespace laywright
