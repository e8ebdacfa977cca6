#include "session/records_work.h"

#include <algorithm>
#include <utility>

#include "plan/plan_file.h"
#include "records/keep_fit.h"
#include "session/advice.h"
#include "session/records_home.h"

namespace laywright {
namespace {

// Without the bytes of its pictures, which may be many.
Result<SpoolRecord> record_of(RecordBook& book, long long number) {
  RecordFilter filter;
  filter.number = number;
  Result<std::vector<SpoolRecord>> found = book.list(filter);
  if (!found.ok()) return found.issues();
  std::vector<SpoolRecord> records = std::move(found).value();
  if (records.empty()) return book.find(number);  // which says that there is none
  return std::move(records.front());
}

Issues find_page(RecordBook& book, RecordsSeen& seen) {
  const auto here = std::find_if(seen.records.begin(), seen.records.end(),
                                 [&](const SpoolRecord& each) { return each.number == seen.of.number; });
  if (here != seen.records.end()) {
    seen.page = *here;
    return {};
  }
  Result<SpoolRecord> other = record_of(book, seen.of.number);
  if (!other.ok()) return other.issues();
  seen.page = std::move(other).value();
  return {};
}

Issues fill(RecordBook& book, RecordsSeen& seen) {
  Result<std::vector<SpoolRecord>> list = book.list(seen.of.filter);
  if (!list.ok()) return list.issues();
  seen.records = std::move(list).value();
  seen.trends = trends_of(seen.records, {});
  std::reverse(seen.records.begin(), seen.records.end());
  if (seen.of.number == 0) return {};
  if (Issues trouble = find_page(book, seen); !trouble.empty()) return trouble;
  Result<Plan> plan = plan_from_text(seen.page->plan_text, seen.page->plan_file);
  if (plan.ok()) seen.plan = std::move(plan).value();
  return {};
}

Issue words_of(const char* what) {
  Issue issue;
  issue.what = what;
  return issue;
}

}  // namespace

JobResult<RecordsSeen> read_records(const RecordsLook& look, std::optional<long long> known) {
  RecordsSeen seen;
  seen.of = look;
  const Result<RecordsPlace> place = records_place(look.place);
  if (!place.ok()) {
    seen.trouble = place.issues();
    return seen;
  }
  seen.place_words = place.value().words;
  Result<RecordBook> opened = RecordBook::open(place.value(), Opening::to_read);
  if (!opened.ok()) {
    seen.none_yet = says_none_yet(opened.issues());
    if (!seen.none_yet) seen.trouble = opened.issues();
    return seen;
  }
  RecordBook book = std::move(opened).value();
  // Counted first: what comes in between is found by the next reading.
  const Result<long long> entries = book.entries();
  if (entries.ok() && known == entries.value()) return Stopped{};
  seen.trouble = entries.issues();
  if (entries.ok()) {
    seen.entries = entries.value();
    seen.trouble = fill(book, seen);
  }
  return seen;
}

JobResult<RecordFit> fit_recorded(const std::string& place, long long number, const std::string& by,
                                  Progress& progress) {
  Result<RecordBook> opened = open_book(place, Opening::to_read);
  if (!opened.ok()) return opened.issues();
  RecordBook book = std::move(opened).value();
  const Result<SpoolRecord> record = record_of(book, number);
  if (!record.ok()) return record.issues();
  AsWound wound = as_wound_of(record.value());
  if (wound.readings.empty()) return words_of("it has no readings; add some first");
  const Result<Plan> plan = plan_from_text(record.value().plan_text, wound.file);
  if (!plan.ok()) return plan.issues();
  FitSettings settings;
  settings.lay.fidelity = fitted_fidelity;
  settings.threads = advice_threads();
  Result<Fit> found = fit(plan.value(), wound, settings, progress);
  if (!found.ok()) return found.issues();
  if (progress.cancelled()) return Stopped{};
  RecordEntry entry = new_entry(LAYWRIGHT_VERSION);
  entry.by = by;
  Issues not_kept = keep_fit(book, record.value(), found.value(), std::move(entry));
  return RecordFit{place,
                   number,
                   record.value().spool,
                   plan.value(),
                   std::move(wound),
                   std::move(found).value(),
                   std::move(not_kept)};
}

}  // namespace laywright
