#include "records/record_rows.h"

#include <functional>
#include <optional>

#include "base/base64.h"

namespace laywright {
namespace {

using soci::into;
using soci::use;

// A value that may be absent, as SOCI takes and gives it.
struct MaybeNumber {
  double value = 0.0;
  soci::indicator there = soci::i_null;

  MaybeNumber() = default;
  explicit MaybeNumber(const std::optional<double>& number)
      : value(number.value_or(0.0)), there(number ? soci::i_ok : soci::i_null) {}
  [[nodiscard]] std::optional<double> number() const {
    return there == soci::i_ok ? std::optional(value) : std::nullopt;
  }
};

Decision decision_from(const std::string& name) {
  for (const Decision decision : {Decision::accepted, Decision::rejected}) {
    if (name == name_of(decision)) return decision;
  }
  return Decision::none;
}

// Rows of `table` for the records from the least number to the greatest, in order; those in between that are not wanted are
// passed over.
template <class... Into>
void for_each_row(soci::session& sql, const std::string& query, std::map<long long, SpoolRecord>& records,
                  const std::function<void(SpoolRecord&)>& take, long long& number, Into... columns) {
  const long long first = records.begin()->first, last = records.rbegin()->first;
  soci::statement statement(sql);
  statement.exchange(use(first));
  statement.exchange(use(last));
  (statement.exchange(columns), ...);
  statement.alloc();
  statement.prepare(query);
  statement.define_and_bind();
  statement.execute();
  while (statement.fetch()) {
    if (const auto found = records.find(number); found != records.end()) take(found->second);
  }
}

RecordEntry* entry_at(SpoolRecord& record, long long place) {
  const auto at = static_cast<std::size_t>(place) - 1;
  return at < record.entries.size() ? &record.entries[at] : nullptr;
}

void insert_reading(soci::session& sql, long long number, long long entry, long long place, const Reading& reading) {
  long long layer = reading.layer.value_or(0), at_end = reading.at_end ? 1 : 0;
  soci::indicator has_layer = reading.layer ? soci::i_ok : soci::i_null;
  MaybeNumber layer_turns(reading.layer_turns), turns(reading.counter_turns), length(reading.counter_length_mm),
      left(reading.diameter_mm[0]), middle(reading.diameter_mm[1]), right(reading.diameter_mm[2]),
      shown(reading.counter_reading), width(reading.width_mm);
  sql << "INSERT INTO readings (record, entry, place, layer, at_end, layer_turns, counter_turns, counter_length_mm, "
         "counter_reading, left_mm, middle_mm, right_mm, width_mm) VALUES (:record, :entry, :place, :layer, :end, "
         ":layer_turns, :turns, :length, :shown, :left, :middle, :right, :width)",
      use(number), use(entry), use(place), use(layer, has_layer), use(at_end),
      use(layer_turns.value, layer_turns.there), use(turns.value, turns.there), use(length.value, length.there),
      use(shown.value, shown.there), use(left.value, left.there), use(middle.value, middle.there),
      use(right.value, right.there), use(width.value, width.there);
}

void insert_fitted(soci::session& sql, long long number, long long entry, long long place,
                   const FittedSetting& setting) {
  const long long told = setting.told_by_readings ? 1 : 0;
  sql << "INSERT INTO fitted (record, entry, place, setting, planned, value, sigma, told) VALUES (:record, :entry, "
         ":place, "
         ":setting, :planned, :value, :sigma, :told)",
      use(number), use(entry), use(place), use(setting.key), use(setting.planned), use(setting.value),
      use(setting.sigma), use(told);
}

void insert_picture(soci::session& sql, long long number, long long entry, long long place,
                    const RecordPicture& picture) {
  const auto size = static_cast<long long>(picture.size);
  const std::string text = to_base64(picture.bytes);
  sql << "INSERT INTO pictures (record, entry, place, kind, caption, size, hash, base64) VALUES (:record, :entry, "
         ":place, "
         ":kind, :caption, :size, :hash, :base64)",
      use(number), use(entry), use(place), use(picture.kind), use(picture.caption), use(size), use(picture.hash),
      use(text);
}

void insert_planned(soci::session& sql, const SpoolRecord& record) {
  long long layer = 0, at_end = 0;
  PlannedLayer row;
  soci::statement insert =
      (sql.prepare
           << "INSERT INTO planned (record, layer, at_end, layer_turns, turns, length_mm, width_mm, left_mm, "
              "middle_mm, right_mm) VALUES (:record, :layer, :end, :layer_turns, :turns, :length, :width, :left, "
              ":middle, :right)",
       use(record.number), use(layer), use(at_end), use(row.layer_turns), use(row.turns), use(row.length_mm),
       use(row.width_mm), use(row.outer_diameter_mm[0]), use(row.outer_diameter_mm[1]),
       use(row.outer_diameter_mm[2]));
  for (const PlannedLayer& each : record.planned) {
    row = each;
    layer = each.layer;
    at_end = each.at_end ? 1 : 0;
    insert.execute(true);
  }
}

void read_planned(soci::session& sql, std::map<long long, SpoolRecord>& records) {
  long long number = 0, layer = 0, at_end = 0;
  PlannedLayer row;
  for_each_row(
      sql,
      "SELECT record, layer, at_end, layer_turns, turns, length_mm, width_mm, left_mm, middle_mm, right_mm FROM "
      "planned "
      "WHERE record BETWEEN :first AND :last ORDER BY record, layer",
      records,
      [&](SpoolRecord& record) {
        row.layer = static_cast<int>(layer);
        row.at_end = at_end != 0;
        record.planned.push_back(row);
      },
      number, into(number), into(layer), into(at_end), into(row.layer_turns), into(row.turns), into(row.length_mm),
      into(row.width_mm), into(row.outer_diameter_mm[0]), into(row.outer_diameter_mm[1]),
      into(row.outer_diameter_mm[2]));
}

void read_entries(soci::session& sql, std::map<long long, SpoolRecord>& records) {
  long long number = 0;
  std::string decision;
  RecordEntry row;
  for_each_row(
      sql,
      "SELECT record, written, written_by, program, decision, reason, note FROM entries WHERE record BETWEEN :first "
      "AND "
      ":last ORDER BY record, entry",
      records,
      [&](SpoolRecord& record) {
        row.decision = decision_from(decision);
        record.entries.push_back(row);
      },
      number, into(number), into(row.written), into(row.by), into(row.program), into(decision), into(row.reason),
      into(row.note));
}

void read_readings(soci::session& sql, std::map<long long, SpoolRecord>& records) {
  long long number = 0, entry = 0, layer = 0, at_end = 0;
  soci::indicator has_layer = soci::i_null;
  MaybeNumber layer_turns, turns, length, shown, left, middle, right, width;
  for_each_row(
      sql,
      "SELECT record, entry, layer, at_end, layer_turns, counter_turns, counter_length_mm, counter_reading, "
      "left_mm, "
      "middle_mm, right_mm, width_mm FROM readings WHERE record BETWEEN :first AND :last ORDER BY record, entry, "
      "place",
      records,
      [&](SpoolRecord& record) {
        Reading reading;
        if (has_layer == soci::i_ok) reading.layer = static_cast<int>(layer);
        reading.at_end = at_end != 0;
        reading.layer_turns = layer_turns.number();
        reading.counter_turns = turns.number();
        reading.counter_length_mm = length.number();
        reading.counter_reading = shown.number();
        reading.width_mm = width.number();
        reading.diameter_mm = {left.number(), middle.number(), right.number()};
        if (RecordEntry* of = entry_at(record, entry)) of->readings.push_back(reading);
      },
      number, into(number), into(entry), into(layer, has_layer), into(at_end),
      into(layer_turns.value, layer_turns.there), into(turns.value, turns.there), into(length.value, length.there),
      into(shown.value, shown.there), into(left.value, left.there), into(middle.value, middle.there),
      into(right.value, right.there), into(width.value, width.there));
}

void read_fitted(soci::session& sql, std::map<long long, SpoolRecord>& records) {
  long long number = 0, entry = 0, told = 0;
  FittedSetting row;
  for_each_row(
      sql,
      "SELECT record, entry, setting, planned, value, sigma, told FROM fitted WHERE record BETWEEN :first AND :last "
      "ORDER BY "
      "record, entry, place",
      records,
      [&](SpoolRecord& record) {
        row.told_by_readings = told != 0;
        if (RecordEntry* of = entry_at(record, entry)) of->fitted.push_back(row);
      },
      number, into(number), into(entry), into(row.key), into(row.planned), into(row.value), into(row.sigma),
      into(told));
}

void read_pictures(soci::session& sql, std::map<long long, SpoolRecord>& records) {
  long long number = 0, entry = 0, size = 0;
  RecordPicture row;
  for_each_row(
      sql,
      "SELECT record, entry, kind, caption, size, hash FROM pictures WHERE record BETWEEN :first AND :last ORDER BY "
      "record, "
      "entry, place",
      records,
      [&](SpoolRecord& record) {
        row.size = static_cast<std::size_t>(size);
        if (RecordEntry* of = entry_at(record, entry)) of->pictures.push_back(row);
      },
      number, into(number), into(entry), into(row.kind), into(row.caption), into(size), into(row.hash));
}

}  // namespace

void insert_entry(soci::session& sql, long long number, long long place, const RecordEntry& entry) {
  const std::string decision = name_of(entry.decision);
  sql << "INSERT INTO entries (record, entry, written, written_by, program, decision, reason, note) VALUES "
         "(:record, :entry, "
         ":written, :by, :program, :decision, :reason, :note)",
      use(number), use(place), use(entry.written), use(entry.by), use(entry.program), use(decision),
      use(entry.reason), use(entry.note);
  long long at = 0;
  for (const Reading& reading : entry.readings) insert_reading(sql, number, place, ++at, reading);
  at = 0;
  for (const FittedSetting& setting : entry.fitted) insert_fitted(sql, number, place, ++at, setting);
  at = 0;
  for (const RecordPicture& picture : entry.pictures) insert_picture(sql, number, place, ++at, picture);
}

void insert_record(soci::session& sql, const SpoolRecord& record) {
  sql << "INSERT INTO records (number, identity, spool, machine, order_number, date, title, plan_file, revision, "
         "plan_text, "
         "program, fidelity, seed, greatest_diameter_mm, inside_width_mm) VALUES (:number, :identity, :spool, "
         ":machine, "
         ":order_number, :date, :title, :plan_file, :revision, :plan_text, :program, :fidelity, :seed, :greatest, "
         ":inside)",
      use(record.number), use(record.identity), use(record.spool), use(record.machine), use(record.order),
      use(record.date), use(record.title), use(record.plan_file), use(record.revision), use(record.plan_text),
      use(record.program), use(record.fidelity), use(record.seed), use(record.greatest_diameter_mm),
      use(record.inside_width_mm);
  insert_planned(sql, record);
  for (std::size_t i = 0; i < record.entries.size(); ++i) {
    insert_entry(sql, record.number, static_cast<long long>(i) + 1, record.entries[i]);
  }
}

void read_details(soci::session& sql, std::map<long long, SpoolRecord>& records) {
  if (records.empty()) return;
  read_planned(sql, records);
  read_entries(sql, records);  // before what stands in them
  read_readings(sql, records);
  read_fitted(sql, records);
  read_pictures(sql, records);
}

void read_picture_bytes(soci::session& sql, SpoolRecord& record) {
  for (std::size_t i = 0; i < record.entries.size(); ++i) {
    for (std::size_t k = 0; k < record.entries[i].pictures.size(); ++k) {
      std::string text;
      const auto entry = static_cast<long long>(i) + 1, place = static_cast<long long>(k) + 1;
      sql << "SELECT base64 FROM pictures WHERE record = :record AND entry = :entry AND place = :place",
          use(record.number), use(entry), use(place), into(text);
      record.entries[i].pictures[k].bytes = from_base64(text).value_or("");
    }
  }
}

}  // namespace laywright
