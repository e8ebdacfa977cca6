#include "records/record_schema.h"

#include <string>
#include <vector>

#include <fmt/format.h>

#include "base/today.h"
#include "records/record_session.h"
#include "records/record_trouble.h"

namespace laywright {
namespace {

// Statements that both databases understand. A migration that has been released is never changed: a further one is added.
const std::vector<std::vector<std::string>>& migrations() {
  static const std::vector<std::vector<std::string>> all{
      {
          // 1
          "CREATE TABLE records (number BIGINT PRIMARY KEY, identity TEXT NOT NULL UNIQUE, spool TEXT NOT NULL, "
          "machine "
          "TEXT NOT NULL, order_number TEXT NOT NULL, date TEXT NOT NULL, title TEXT NOT NULL, plan_file TEXT NOT "
          "NULL, "
          "revision TEXT NOT NULL, plan_text TEXT NOT NULL, program TEXT NOT NULL, fidelity DOUBLE PRECISION NOT "
          "NULL, "
          "seed TEXT NOT NULL, greatest_diameter_mm DOUBLE PRECISION NOT NULL, inside_width_mm DOUBLE PRECISION NOT "
          "NULL)",
          "CREATE TABLE planned (record BIGINT NOT NULL REFERENCES records, layer BIGINT NOT NULL, at_end BIGINT "
          "NOT NULL, "
          "layer_turns DOUBLE PRECISION NOT NULL, turns DOUBLE PRECISION NOT NULL, length_mm DOUBLE PRECISION NOT "
          "NULL, "
          "width_mm DOUBLE PRECISION NOT NULL, left_mm DOUBLE PRECISION NOT NULL, middle_mm DOUBLE PRECISION NOT "
          "NULL, "
          "right_mm DOUBLE PRECISION NOT NULL, PRIMARY KEY (record, layer))",
          "CREATE TABLE entries (record BIGINT NOT NULL REFERENCES records, entry BIGINT NOT NULL, written TEXT NOT "
          "NULL, "
          "written_by TEXT NOT NULL, program TEXT NOT NULL, decision TEXT NOT NULL, reason TEXT NOT NULL, note TEXT "
          "NOT "
          "NULL, PRIMARY KEY (record, entry))",
          "CREATE TABLE readings (record BIGINT NOT NULL, entry BIGINT NOT NULL, place BIGINT NOT NULL, layer "
          "BIGINT, "
          "at_end BIGINT NOT NULL, layer_turns DOUBLE PRECISION, counter_turns DOUBLE PRECISION, counter_length_mm "
          "DOUBLE "
          "PRECISION, left_mm DOUBLE PRECISION, middle_mm DOUBLE PRECISION, right_mm DOUBLE PRECISION, PRIMARY KEY "
          "(record, entry, place), FOREIGN KEY (record, entry) REFERENCES entries)",
          "CREATE TABLE pictures (record BIGINT NOT NULL, entry BIGINT NOT NULL, place BIGINT NOT NULL, kind TEXT "
          "NOT NULL, "
          "caption TEXT NOT NULL, size BIGINT NOT NULL, hash TEXT NOT NULL, base64 TEXT NOT NULL, PRIMARY KEY "
          "(record, "
          "entry, place), FOREIGN KEY (record, entry) REFERENCES entries)",
          "CREATE INDEX records_by_revision ON records (revision)",
          "CREATE INDEX records_by_machine ON records (machine, date)",
      },
      {
          // 2: what a fit found is kept, so that machines can be watched over time; readings have the machine's counter and widths.
          "ALTER TABLE readings ADD COLUMN counter_reading DOUBLE PRECISION",
          "ALTER TABLE readings ADD COLUMN width_mm DOUBLE PRECISION",
          "CREATE TABLE fitted (record BIGINT NOT NULL, entry BIGINT NOT NULL, place BIGINT NOT NULL, setting TEXT "
          "NOT NULL, "
          "planned DOUBLE PRECISION NOT NULL, value DOUBLE PRECISION NOT NULL, sigma DOUBLE PRECISION NOT NULL, "
          "told BIGINT "
          "NOT NULL, PRIMARY KEY (record, entry, place), FOREIGN KEY (record, entry) REFERENCES entries)",
      },
  };
  static_assert(schema_version == 2);
  return all;
}

bool holds_table(soci::session& sql, const RecordsPlace& place, const std::string& name) {
  long long count = 0;
  if (place.on_server()) {
    sql << "SELECT count(*) FROM pg_class WHERE oid = to_regclass(:name)", soci::use(name), soci::into(count);
  } else {
    sql << "SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name = :name", soci::use(name),
        soci::into(count);
  }
  return count > 0;
}

// 0: it holds no records yet.
int version_of(soci::session& sql, const RecordsPlace& place) {
  if (!holds_table(sql, place, "laywright_versions")) return 0;
  long long version = 0;
  sql << "SELECT coalesce(max(version), 0) FROM laywright_versions", soci::into(version);
  return static_cast<int>(version);
}

// A server's database may hold other tables besides; a file is ours, or none of our business.
bool is_of_others(soci::session& sql, const RecordsPlace& place) {
  if (place.on_server()) return holds_table(sql, place, "records");
  long long count = 0;
  sql << "SELECT count(*) FROM sqlite_master", soci::into(count);
  return count > 0;
}

}  // namespace

Issues bring_to_schema(soci::session& sql, const RecordsPlace& place, bool make) {
  const auto is_newer = [&](int version) {
    return place_issue(
        place, fmt::format("was written by a newer version of this program (format {}, known are those up to {}); "
                           "use that one, or choose another place for records",
                           version, schema_version));
  };
  const int found = version_of(sql, place);
  if (found == schema_version) return {};
  if (found > schema_version) return {is_newer(found)};
  // Asked again: another program may have made them in between.
  if (found == 0 && is_of_others(sql, place) && version_of(sql, place) == 0) {
    return {place_issue(place, place.on_server()
                                   ? "holds a table \"records\" of something else; choose another place for records"
                                   : "is a database of something else; choose another place for records")};
  }
  if (found == 0 && !make) return {place_issue(place, words_for_none_yet)};

  WriteTransaction transaction(sql, place);
  const int version = version_of(sql, place);  // another program may have been quicker
  if (version > schema_version) return {is_newer(version)};
  if (version == 0)
    sql << "CREATE TABLE IF NOT EXISTS laywright_versions (version BIGINT PRIMARY KEY, made TEXT NOT NULL)";
  for (int next = version + 1; next <= schema_version; ++next) {
    for (const std::string& statement : migrations()[static_cast<std::size_t>(next) - 1]) sql << statement;
    const std::string day = today();
    sql << "INSERT INTO laywright_versions (version, made) VALUES (:version, :made)", soci::use(next),
        soci::use(day);
  }
  transaction.commit();
  return {};
}

}  // namespace laywright
