// What the study command is given, read into a study.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "advise/study.h"
#include "app/advice_options.h"

namespace laywright {

struct StudyOptions : AdviceOptions {
  std::vector<std::string> axes;        // KEY=FROM:TO or KEY=FROM:TO:COUNT
  std::vector<std::string> tolerances;  // KEY=SIZE or KEY=SIZE:normal
  bool own_tolerances = false;
  int samples = 64;
  std::string end;  // over which it is drawn off; empty: off the side
  std::string shard = "1/1";
  std::string folder;
  std::vector<std::string> merge;

  std::size_t shard_index = 0, shards = 1;
};

[[nodiscard]] Result<StudySpec> read_spec(const PlanDraft& plan, const StudyOptions& options);

// "2/5" into index 1 of 5. False when it is anything else.
[[nodiscard]] bool read_shard(const std::string& text, std::size_t& index, std::size_t& count);

}  // namespace laywright
