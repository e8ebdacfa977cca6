#include "records/keep_fit.h"

#include <fmt/format.h>

namespace laywright {

std::string no_readings_words(long long number) { return fmt::format("record {} has no readings", number); }

Issues keep_fit(RecordBook& book, const SpoolRecord& record, const Fit& found, RecordEntry entry) {
  for (const Fitted& each : found.fitted)
    entry.fitted.push_back(
        {each.unknown.path, each.unknown.believed, each.value, each.sigma, each.told_by_readings});
  if (entry.fitted == fitted_of(record)) return {};
  return book.amend(record.number, entry);
}

}  // namespace laywright
