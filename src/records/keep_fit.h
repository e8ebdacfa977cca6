// What a fit found, kept with the spool that it was made of, so that its machine can be watched over time.
#pragma once

#include <string>

#include "advise/fit.h"
#include "records/record_book.h"

namespace laywright {

// The error of a record that has none, with where they come from.
[[nodiscard]] std::string no_readings_words(long long number);

// Adds an entry with the settings that were found to the record; `entry` says who and when. What the last fit of it said
// already is not kept twice. Issues: as RecordBook::amend.
[[nodiscard]] Issues keep_fit(RecordBook& book, const SpoolRecord& record, const Fit& found, RecordEntry entry);

}  // namespace laywright
