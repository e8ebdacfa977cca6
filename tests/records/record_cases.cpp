#include "records/record_cases.h"

#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <csignal>
#include <set>

#include <catch2/catch.hpp>

#include "records/record_book.h"
#include "records/record_schema.h"
#include "records/record_session.h"
#include "records/records_csv.h"
#include "records/sample_record.h"
#include "records/version_1.h"

namespace laywright::testing {
namespace {

using Catch::Matchers::Contains;

RecordBook opened(const RecordsPlace& place, Opening opening = Opening::to_write) {
  Result<RecordBook> book = RecordBook::open(place, opening);
  if (!book.ok()) FAIL(to_text(book.issues().front()));
  return std::move(book).value();
}

long long added(RecordBook& book, const SpoolRecord& record) {
  const Result<long long> number = book.add(record);
  if (!number.ok()) FAIL(to_text(number.issues().front()));
  return number.value();
}

SpoolRecord found(RecordBook& book, long long number) {
  const Result<SpoolRecord> record = book.find(number);
  if (!record.ok()) FAIL(to_text(record.issues().front()));
  return record.value();
}

std::vector<SpoolRecord> listed(RecordBook& book, const RecordFilter& filter = {}) {
  const Result<std::vector<SpoolRecord>> list = book.list(filter);
  if (!list.ok()) FAIL(to_text(list.issues().front()));
  return list.value();
}

std::vector<long long> numbers_of(RecordBook& book, const RecordFilter& filter) {
  std::vector<long long> numbers;
  for (const SpoolRecord& each : listed(book, filter)) numbers.push_back(each.number);
  return numbers;
}

// The table holds all but pictures to the last bit, so that two records are alike where their tables are.
std::string as_table(const SpoolRecord& record) { return records_table({record}, true).csv; }

// As said, with all that it may have.
SpoolRecord full_record() {
  SpoolRecord record = sample_record();
  RecordEntry& entry = record.entries.front();
  Reading end;
  end.at_end = true;
  end.counter_turns = 40.25;
  end.counter_reading = 1.0 / 7.0;
  end.width_mm = 20.3;
  end.counter_length_mm = 12'800.0 / 3.0;
  end.diameter_mm = {std::nullopt, 103.75, std::nullopt};
  Reading between;
  between.counter_turns = 1.0 / 3.0;
  between.diameter_mm = {1.0, std::nullopt, 2.0};
  entry.readings = {reading_of(1, 102.1, 102.0, 102.2), between, end};
  entry.fitted = {{"traverse.pitch", 1.02, 1.0 / 3.0, 1e-17, true}, {"traverse.left_stop", 0.5, -0.25, 0.1, false}};
  entry.pictures = {picture_of(png_bytes(300), "the \"left\" edge", "a.png").value(),
                    picture_of("\xff\xd8\xff" + std::string(1, '\0') + "rest", "", "b.jpg").value()};
  entry.decision = Decision::rejected;
  entry.reason = "edge; slipped";
  return record;
}

void keeps_all(const RecordsPlace& place) {
  RecordBook book = opened(place);
  SpoolRecord record = full_record();
  record.number = added(book, record);
  CHECK(record.number == 1);
  CHECK(added(book, sample_record("18")) == 2);
  RecordBook other = opened(place, Opening::to_read);
  const SpoolRecord back = found(other, 1);
  CHECK(as_table(back) == as_table(record));
  CHECK(back.entries[0].pictures[0].bytes == record.entries[0].pictures[0].bytes);
  CHECK(back.entries[0].pictures[1].bytes == record.entries[0].pictures[1].bytes);
  CHECK(listed(other)[0].entries[0].pictures[0].bytes.empty());
  const Result<SpoolRecord> none = other.find(3);
  REQUIRE_FALSE(none.ok());
  CHECK_THAT(to_text(none.issues().front()), Contains("no record 3") && Contains("record list"));
}

void filters(const RecordsPlace& place) {
  RecordBook book = opened(place);
  SpoolRecord first = sample_record("a"), second = sample_record("b"), third = sample_record("c");
  second.machine = "winder' OR ''='";
  second.date = "2026-11-25";
  second.entries[0].decision = Decision::accepted;
  third.order = "B";
  third.title = "Cable";
  third.date = "2026-12-01";
  for (const SpoolRecord& each : {first, second, third}) added(book, each);
  const auto with = [&](auto set) {
    RecordFilter filter;
    set(filter);
    return numbers_of(book, filter);
  };
  using Numbers = std::vector<long long>;
  CHECK(with([](RecordFilter&) {}) == Numbers{1, 2, 3});
  CHECK(with([](RecordFilter& f) { f.machine = "winder' OR ''='"; }) == Numbers{2});
  CHECK(with([](RecordFilter& f) { f.machine = "winder' OR '1'='1"; }).empty());
  CHECK(with([](RecordFilter& f) { f.spool = "c"; }) == Numbers{3});
  CHECK(with([](RecordFilter& f) { f.order = "B"; }) == Numbers{3});
  CHECK(with([](RecordFilter& f) { f.plan = "CABLE"; }) == Numbers{3});
  CHECK(with([](RecordFilter& f) { f.from = "2026-11-25"; }) == Numbers{2, 3});
  CHECK(with([](RecordFilter& f) { f.to = "2026-11-25"; }) == Numbers{1, 2});
  CHECK(with([](RecordFilter& f) { f.state = "accepted"; }) == Numbers{2});
  CHECK(with([](RecordFilter& f) { f.state = "undecided"; }) == Numbers{1, 3});
  CHECK(with([&](RecordFilter& f) { f.revision = first.revision; }) == Numbers{1, 2, 3});
  CHECK(with([](RecordFilter& f) { f.revision = "0000-0000"; }).empty());
  CHECK(with([](RecordFilter& f) { f.from = "2026-11-25", f.state = "undecided"; }) == Numbers{3});
}

void amends(const RecordsPlace& place) {
  RecordBook book = opened(place);
  SpoolRecord record = sample_record();
  record.entries[0].readings = {reading_of(1, 102.1, 102.0, 102.2)};
  record.entries[0].decision = Decision::accepted;
  added(book, record);
  RecordEntry later = sample_entry();
  later.decision = Decision::rejected;
  later.reason = "measured again";
  Reading again;
  again.layer = 1;
  again.diameter_mm[1] = 102.3;
  later.readings = {again, reading_of(2, 104.0, 104.0, 104.0)};
  REQUIRE(book.amend(1, later).empty());
  const SpoolRecord back = found(book, 1);
  REQUIRE(back.entries.size() == 2);
  CHECK(same_entry(back.entries[0], record.entries[0]));
  CHECK(same_entry(back.entries[1], later));
  CHECK(state_of(back) == "rejected");
  // The later reading holds, where it says something.
  const AsWound wound = as_wound_of(back);
  REQUIRE(wound.readings.size() == 2);
  CHECK(wound.readings[0].diameter_mm[0] == 102.1);
  CHECK(wound.readings[0].diameter_mm[1] == 102.3);
  const Issues none = book.amend(9, later);
  REQUIRE(none.size() == 1);
  CHECK_THAT(to_text(none.front()), Contains("no record 9"));
  later.reason.clear();
  CHECK(has_error(book.amend(1, later)));
  CHECK(found(book, 1).entries.size() == 2);
}

// What a child process does; it never comes back into the test.
template <class Work>
pid_t in_a_process(const Work& work) {
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) ::_exit(work() ? 0 : 1);
  return child;
}

bool has_ended_well(pid_t child) {
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  return WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

void writers_wait(const RecordsPlace& place) {
  constexpr int writers = 4, each = 6;
  std::vector<pid_t> children;
  for (int i = 0; i < writers; ++i) {
    // All of them find nothing, and one of them makes the tables.
    children.push_back(in_a_process([&] {
      Result<RecordBook> book = RecordBook::open(place, Opening::to_write);
      if (!book.ok()) return false;
      RecordBook open = std::move(book).value();
      for (int k = 0; k < each; ++k) {
        if (!open.add(sample_record()).ok()) return false;
      }
      return true;
    }));
  }
  for (const pid_t child : children) CHECK(has_ended_well(child));
  RecordBook book = opened(place);
  const std::vector<SpoolRecord> all = listed(book);
  REQUIRE(all.size() == writers * each);
  for (std::size_t i = 0; i < all.size(); ++i) CHECK(all[i].number == static_cast<long long>(i) + 1);
}

void killed_while_adding(const RecordsPlace& place) {
  { RecordBook made = opened(place); }
  long long told = 0;
  for (int round = 0; round < 5; ++round) {
    std::array<int, 2> ends{};
    REQUIRE(::pipe(ends.data()) == 0);
    const pid_t child = in_a_process([&] {
      Result<RecordBook> book = RecordBook::open(place, Opening::to_write);
      if (!book.ok()) return false;
      RecordBook open = std::move(book).value();
      SpoolRecord record = full_record();
      record.entries[0].pictures[0] = picture_of(png_bytes(400'000), "", "a.png").value();
      for (;;) {
        record.identity = new_identity();
        const Result<long long> number = open.add(record);
        if (!number.ok() || ::write(ends[1], &number.value(), sizeof(long long)) < 0) return false;
      }
    });
    ::close(ends[1]);
    for (int i = 0; i < 3; ++i) REQUIRE(::read(ends[0], &told, sizeof told) == sizeof told);
    ::usleep(static_cast<useconds_t>(1500 * round));  // within the next one
    REQUIRE(::kill(child, SIGKILL) == 0);
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    REQUIRE(WIFSIGNALED(status));
    while (::read(ends[0], &told, sizeof told) == sizeof told) {
    }
    ::close(ends[0]);
  }
  RecordBook book = opened(place);
  const std::vector<SpoolRecord> all = listed(book);
  // Each that was told is there; of those that were not, each killed child may have left one whole.
  CHECK(all.size() >= static_cast<std::size_t>(told));
  CHECK(all.size() <= static_cast<std::size_t>(told) + 1);
  for (const SpoolRecord& each : all) {
    const SpoolRecord back = found(book, each.number);
    REQUIRE(back.entries.size() == 1);
    CHECK(back.planned.size() == 2);
    CHECK(back.entries[0].readings.size() == 3);
    REQUIRE(back.entries[0].pictures.size() == 2);
    CHECK(hash_text(back.entries[0].pictures[0].bytes) == back.entries[0].pictures[0].hash);
  }
  added(book, sample_record());  // and it goes on
}

void migrates(const RecordsPlace& place) {
  {
    const auto sql = open_session(place);
    for (const std::string& statement : version_1()) *sql << statement;
  }
  RecordBook book = opened(place, Opening::to_read);
  SpoolRecord old = found(book, 1);
  CHECK(old.spool == "S-1");
  CHECK(old.planned.size() == 1);
  REQUIRE(old.entries.size() == 1);
  CHECK(old.entries[0].readings.size() == 1);
  REQUIRE(old.entries[0].pictures.size() == 1);
  CHECK(old.entries[0].pictures[0].bytes == "foobar");  // RFC 4648, section 10
  // What version 1 could not hold.
  RecordEntry fit = sample_entry();
  fit.fitted = {{"traverse.pitch", 1.02, 1.03, 0.01, true}};
  REQUIRE(book.amend(1, fit).empty());
  CHECK(fitted_of(found(book, 1)) == fit.fitted);
  const auto sql = open_session(place);
  long long versions = 0, greatest = 0;
  *sql << "SELECT count(*), max(version) FROM laywright_versions", soci::into(versions), soci::into(greatest);
  CHECK(versions == 2);
  CHECK(greatest == schema_version);
}

void migration_that_fails(const RecordsPlace& place) {
  {
    const auto sql = open_session(place);
    for (const std::string& statement : version_1()) *sql << statement;
    *sql << "CREATE TABLE fitted (in_the_way BIGINT)";  // so that the migration cannot make it
  }
  CHECK_FALSE(RecordBook::open(place, Opening::to_write).ok());
  const auto sql = open_session(place);
  long long greatest = 0, records = 0;
  *sql << "SELECT max(version) FROM laywright_versions", soci::into(greatest);
  *sql << "SELECT count(*) FROM records", soci::into(records);
  CHECK(greatest == 1);
  CHECK(records == 1);
  *sql << "DROP TABLE fitted";
  CHECK(RecordBook::open(place, Opening::to_write).ok());
}

void refuses_what_is_newer(const RecordsPlace& place) {
  { RecordBook made = opened(place); }
  {
    const auto sql = open_session(place);
    *sql << "INSERT INTO laywright_versions (version, made) VALUES (99, '2030-01-01')";
  }
  for (const Opening opening : {Opening::to_read, Opening::to_write}) {
    const Result<RecordBook> book = RecordBook::open(place, opening);
    REQUIRE_FALSE(book.ok());
    CHECK_THAT(to_text(book.issues().front()), Contains("newer version") && Contains("99") && Contains(place.words));
  }
}

void refuses_what_is_of_others(const RecordsPlace& place) {
  {
    const auto sql = open_session(place);
    *sql << "CREATE TABLE records (title TEXT)";
  }
  const Result<RecordBook> book = RecordBook::open(place, Opening::to_write);
  REQUIRE_FALSE(book.ok());
  CHECK_THAT(to_text(book.issues().front()), Contains("something else") && Contains("another place"));
}

void reading_makes_nothing(const RecordsPlace& place) {
  { const auto sql = open_session(place); }  // the file is there, and empty
  const Result<RecordBook> book = RecordBook::open(place, Opening::to_read);
  REQUIRE_FALSE(book.ok());
  CHECK_THAT(to_text(book.issues().front()), Contains("no records yet"));
}

void takes_in(const RecordsPlace& place) {
  RecordBook book = opened(place);
  SpoolRecord first = full_record(), second = sample_record("18");
  first.number = 7;
  second.number = 9;
  const auto take = [&](std::vector<SpoolRecord> records) { return book.take_in(std::move(records)); };
  Result<TakenIn> taken = take({first, second});
  REQUIRE(taken.ok());
  CHECK(taken.value().added == std::vector<long long>{7, 9});
  CHECK(as_table(found(book, 7)) == as_table(first));
  taken = take({first, second});
  REQUIRE(taken.ok());
  CHECK(taken.value().added.empty());
  CHECK(taken.value().there == 2);
  CHECK(listed(book).size() == 2);
  // Amended elsewhere.
  SpoolRecord longer = second;
  longer.entries.push_back(sample_entry());
  taken = take({longer});
  REQUIRE(taken.ok());
  CHECK(taken.value().extended == std::vector<long long>{9});
  CHECK(found(book, 9).entries.size() == 2);
  taken = take({second});  // the shorter one is no news
  REQUIRE(taken.ok());
  CHECK(taken.value().there == 1);
  // Its number is taken.
  SpoolRecord stranger = sample_record("19");
  stranger.number = 7;
  taken = take({stranger});
  REQUIRE(taken.ok());
  CHECK(taken.value().added == std::vector<long long>{10});
  // All or none.
  SpoolRecord other = first, fresh = sample_record("20");
  other.machine = "another";
  taken = take({fresh, other});
  REQUIRE_FALSE(taken.ok());
  CHECK_THAT(to_text(taken.issues().front()), Contains("number 7") && Contains("nothing was imported"));
  CHECK(listed(book).size() == 3);
}

}  // namespace

const std::vector<RecordCase>& record_cases() {
  static const std::vector<RecordCase> all{
      {"all that a record has comes back, to the last bit", keeps_all},
      {"records are found by what is asked", filters},
      {"what is added later stands behind what was said before", amends},
      {"writers wait for each other, and each record has a number of its own", writers_wait},
      {"a program that is killed loses nothing that was told, and leaves no half record", killed_while_adding},
      {"a database of version 1 is brought to today's", migrates},
      {"a migration that fails changes nothing", migration_that_fails},
      {"a newer database is refused", refuses_what_is_newer},
      {"a database of something else is left alone", refuses_what_is_of_others},
      {"who only reads makes no tables", reading_makes_nothing},
      {"records from elsewhere are taken in once, all or none", takes_in},
  };
  return all;
}

}  // namespace laywright::testing
