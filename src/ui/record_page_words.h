// What the page of a record says, made once for each reading.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "records/record_words.h"
#include "session/records_desk.h"
#include "takeup/takeup_run.h"

namespace laywright {

struct RecordPageWords {
  std::shared_ptr<const RecordsSeen> of;  // null: none yet
  std::string heading, reason;
  std::vector<RecordLine> head;
  std::vector<ReadingLine> readings;
  std::vector<HistoryEntry> history;
  std::vector<Checkpoint> checkpoints;  // where it may be measured
};

// Precondition: seen->page.
[[nodiscard]] RecordPageWords page_words(const std::shared_ptr<const RecordsSeen>& seen);

}  // namespace laywright
