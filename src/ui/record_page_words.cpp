#include "ui/record_page_words.h"

#include "base/readable.h"
#include "session/record_places.h"

namespace laywright {

RecordPageWords page_words(const std::shared_ptr<const RecordsSeen>& seen) {
  const SpoolRecord& record = *seen->page;
  RecordPageWords words;
  words.of = seen;
  words.heading = record_heading(record);
  if (const RecordEntry* decided = entry_of_decision(record)) words.reason = visible(decided->reason);
  words.head = head_lines(record);
  words.readings = reading_lines(record);
  words.history = history_of(record, seen->plan ? &seen->plan->draft() : nullptr);
  if (seen->plan) words.checkpoints = checkpoints_of(record, *seen->plan);
  return words;
}

}  // namespace laywright
