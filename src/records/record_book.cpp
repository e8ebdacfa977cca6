#include "records/record_book.h"

#include <algorithm>
#include <map>
#include <utility>

#include <fmt/format.h>

#include "base/readable.h"
#include "base/spelling.h"
#include "records/record_rows.h"
#include "records/record_schema.h"
#include "records/record_session.h"
#include "records/record_trouble.h"

namespace laywright {
namespace {

using soci::into;
using soci::use;

Issue none_of_number(const RecordsPlace& place, long long number) {
  return place_issue(place,
                     fmt::format("holds no record {}; `laywright record list` shows those that there are", number));
}

long long entries_of(soci::session& sql, long long number) {
  long long count = 0;
  sql << "SELECT count(*) FROM entries WHERE record = :record", use(number), into(count);
  return count;
}

long long next_number(soci::session& sql) {
  long long greatest = 0;
  sql << "SELECT coalesce(max(number), 0) FROM records", into(greatest);
  return greatest + 1;
}

// What can be asked of the table of records itself; the rest, of their entries, is asked afterwards.
struct Conditions {
  std::string text;
  std::vector<std::string> values;

  explicit Conditions(const RecordFilter& filter) {
    add("machine =", filter.machine);
    add("spool =", filter.spool);
    add("order_number =", filter.order);
    add("revision =", filter.revision);
    add("identity =", filter.identity);
    add("date >=", filter.from);
    add("date <=", filter.to);
    if (filter.number > 0) text += fmt::format("{} number = {}", text.empty() ? " WHERE" : " AND", filter.number);
  }

 private:
  void add(const char* column, const std::string& value) {
    if (value.empty()) return;
    values.push_back(value);
    text += fmt::format("{} {} :value{}", text.empty() ? " WHERE" : " AND", column, values.size());
  }
};

bool matches(const SpoolRecord& record, const RecordFilter& filter) {
  if (!filter.state.empty() && state_of(record) != filter.state) return false;
  const std::string part = lower(filter.plan);
  return lower(record.title).find(part) != std::string::npos ||
         lower(record.plan_file).find(part) != std::string::npos;
}

std::map<long long, SpoolRecord> read_records(soci::session& sql, const RecordFilter& filter) {
  std::map<long long, SpoolRecord> records;
  const Conditions conditions(filter);
  SpoolRecord row;
  soci::statement statement(sql);
  for (const std::string& value : conditions.values) statement.exchange(use(value));
  statement.exchange(into(row.number));
  for (std::string* text : {&row.identity, &row.spool, &row.machine, &row.order, &row.date, &row.title,
                            &row.plan_file, &row.revision, &row.plan_text, &row.program, &row.seed}) {
    statement.exchange(into(*text));
  }
  statement.exchange(into(row.fidelity));
  statement.exchange(into(row.greatest_diameter_mm));
  statement.exchange(into(row.inside_width_mm));
  statement.alloc();
  statement.prepare(
      "SELECT number, identity, spool, machine, order_number, date, title, plan_file, revision, plan_text, program, "
      "seed, "
      "fidelity, greatest_diameter_mm, inside_width_mm FROM records" +
      conditions.text + " ORDER BY number");
  statement.define_and_bind();
  statement.execute();
  while (statement.fetch()) records.emplace(row.number, row);
  read_details(sql, records);
  std::erase_if(records, [&](const auto& each) { return !matches(each.second, filter); });
  return records;
}

// Of two that are the same record: whether one of them has at most further entries.
bool agree(const SpoolRecord& one, const SpoolRecord& other) {
  const auto common = static_cast<std::ptrdiff_t>(std::min(one.entries.size(), other.entries.size()));
  return one.plan_text == other.plan_text && one.planned == other.planned && one.spool == other.spool &&
         one.machine == other.machine && one.order == other.order && one.date == other.date &&
         std::equal(one.entries.begin(), one.entries.begin() + common, other.entries.begin(), same_entry);
}

}  // namespace

struct RecordBook::Inside {
  RecordsPlace place;
  std::unique_ptr<soci::session> sql;
};

RecordBook::RecordBook(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
RecordBook::RecordBook(RecordBook&&) noexcept = default;
RecordBook& RecordBook::operator=(RecordBook&&) noexcept = default;
RecordBook::~RecordBook() = default;

Result<RecordBook> RecordBook::open(const RecordsPlace& place, Opening opening) {
  return with_trouble_told(place, [&]() -> Result<RecordBook> {
    std::error_code error;
    // SQLite would make an empty file.
    if (!place.on_server() && opening == Opening::to_read && !std::filesystem::exists(place.file, error))
      return place_issue(place, words_for_none_there);
    auto inside = std::make_unique<Inside>(Inside{place, open_session(place)});
    if (Issues trouble = bring_to_schema(*inside->sql, place, opening == Opening::to_write); !trouble.empty())
      return trouble;
    return RecordBook(std::move(inside));
  });
}

bool says_none_yet(const Issues& issues) {
  return issues.size() == 1 &&
         (issues.front().what == words_for_none_there || issues.front().what == words_for_none_yet);
}

Result<long long> RecordBook::add(SpoolRecord record) {
  return with_trouble_told(inside_->place, [&]() -> Result<long long> {
    Issues trouble = check_record(record);
    for (const RecordEntry& entry : record.entries) {
      const Issues of_entry = check_entry(entry);
      trouble.insert(trouble.end(), of_entry.begin(), of_entry.end());
    }
    if (!trouble.empty()) return trouble;
    soci::session& sql = *inside_->sql;
    WriteTransaction transaction(sql, inside_->place);
    record.number = next_number(sql);
    insert_record(sql, record);
    transaction.commit();
    return record.number;
  });
}

Issues RecordBook::amend(long long number, const RecordEntry& entry) {
  return with_trouble_told(inside_->place, [&]() -> Issues {
    if (Issues trouble = check_entry(entry); !trouble.empty()) return trouble;
    soci::session& sql = *inside_->sql;
    WriteTransaction transaction(sql, inside_->place);
    const long long before = entries_of(sql, number);
    if (before == 0) return {none_of_number(inside_->place, number)};
    insert_entry(sql, number, before + 1, entry);
    transaction.commit();
    return {};
  });
}

Result<std::vector<SpoolRecord>> RecordBook::list(const RecordFilter& filter) {
  return with_trouble_told(inside_->place, [&]() -> Result<std::vector<SpoolRecord>> {
    const ReadTransaction transaction(*inside_->sql, inside_->place);
    std::vector<SpoolRecord> list;
    for (auto& [number, record] : read_records(*inside_->sql, filter)) list.push_back(std::move(record));
    return list;
  });
}

Result<long long> RecordBook::entries() {
  return with_trouble_told(inside_->place, [&]() -> Result<long long> {
    long long count = 0;
    *inside_->sql << "SELECT count(*) FROM entries", into(count);
    return count;
  });
}

Result<SpoolRecord> RecordBook::find(long long number) {
  return with_trouble_told(inside_->place, [&]() -> Result<SpoolRecord> {
    const ReadTransaction transaction(*inside_->sql, inside_->place);
    RecordFilter filter;
    filter.number = number;
    std::map<long long, SpoolRecord> found;
    if (number > 0) found = read_records(*inside_->sql, filter);
    if (found.empty()) return none_of_number(inside_->place, number);
    read_picture_bytes(*inside_->sql, found.begin()->second);
    return std::move(found.begin()->second);
  });
}

Result<TakenIn> RecordBook::take_in(std::vector<SpoolRecord> records) {
  return with_trouble_told(inside_->place, [&]() -> Result<TakenIn> {
    soci::session& sql = *inside_->sql;
    WriteTransaction transaction(sql, inside_->place);
    TakenIn taken;
    for (SpoolRecord& record : records) {
      RecordFilter same;
      same.identity = record.identity;
      const std::map<long long, SpoolRecord> here = read_records(sql, same);
      if (!here.empty()) {
        const auto& [number, known] = *here.begin();
        if (!agree(known, record)) {
          return place_issue(
              inside_->place,
              fmt::format("has the record of spool \"{}\" as number {}, but it says something else there than in "
                          "the table; nothing was imported. Take it out of the table if this place is right",
                          readable(record.spool), number));
        }
        for (std::size_t i = known.entries.size(); i < record.entries.size(); ++i) {
          insert_entry(sql, number, static_cast<long long>(i) + 1, record.entries[i]);
        }
        if (record.entries.size() > known.entries.size()) {
          taken.extended.push_back(number);
        } else {
          ++taken.there;
        }
        continue;
      }
      RecordFilter at_number;
      at_number.number = record.number;
      if (record.number <= 0 || !read_records(sql, at_number).empty()) record.number = next_number(sql);
      insert_record(sql, record);
      taken.added.push_back(record.number);
    }
    transaction.commit();
    return taken;
  });
}

}  // namespace laywright
