#include "records/spool_record.h"

#include <algorithm>
#include <chrono>
#include <random>
#include <tuple>

#include <fmt/format.h>

#include "base/hash.h"
#include "base/number.h"
#include "base/today.h"

namespace laywright {
namespace {

bool same_reading(const Reading& a, const Reading& b) {
  return std::tie(a.layer, a.at_end, a.layer_turns, a.counter_turns, a.counter_length_mm, a.counter_reading,
                  a.diameter_mm, a.width_mm) == std::tie(b.layer, b.at_end, b.layer_turns, b.counter_turns,
                                                         b.counter_length_mm, b.counter_reading, b.diameter_mm,
                                                         b.width_mm);
}

// Where on the spool it was read: by its layer, or by its counter between layers, or at the end. Layers and counters have no
// common measure without a build; what a counter alone says stands behind the layers.
std::tuple<int, int, double, double> place_of(const Reading& reading) {
  if (reading.at_end) return {2, 0, 0.0, 0.0};
  if (reading.layer) return {0, *reading.layer, 0.0, 0.0};
  return {1, 0, reading.counter_turns.value_or(0.0), reading.counter_length_mm.value_or(0.0)};
}

// Quantities that the later reading has take the place of the earlier ones.
void put_over(Reading& earlier, const Reading& later) {
  const auto put = [](auto& to, const auto& from) {
    if (from) to = from;
  };
  put(earlier.layer_turns, later.layer_turns);
  put(earlier.counter_turns, later.counter_turns);
  put(earlier.counter_length_mm, later.counter_length_mm);
  put(earlier.counter_reading, later.counter_reading);
  put(earlier.width_mm, later.width_mm);
  for (std::size_t i = 0; i < earlier.diameter_mm.size(); ++i) put(earlier.diameter_mm[i], later.diameter_mm[i]);
}

}  // namespace

const char* name_of(Decision decision) {
  return decision == Decision::accepted ? "accepted" : decision == Decision::rejected ? "rejected" : "";
}

RecordEntry new_entry(std::string program) {
  RecordEntry entry;
  entry.written = moment();
  entry.program = std::move(program);
  return entry;
}

bool says_something(const RecordEntry& entry) {
  return entry.decision != Decision::none || !entry.note.empty() || !entry.readings.empty() ||
         !entry.fitted.empty() || !entry.pictures.empty();
}

bool same_entry(const RecordEntry& a, const RecordEntry& b) {
  return std::tie(a.written, a.by, a.program, a.decision, a.reason, a.note, a.fitted) ==
             std::tie(b.written, b.by, b.program, b.decision, b.reason, b.note, b.fitted) &&
         std::equal(a.readings.begin(), a.readings.end(), b.readings.begin(), b.readings.end(), same_reading);
}

const RecordEntry* entry_of_decision(const SpoolRecord& record) {
  const auto found = std::find_if(record.entries.rbegin(), record.entries.rend(),
                                  [](const RecordEntry& entry) { return entry.decision != Decision::none; });
  return found == record.entries.rend() ? nullptr : &*found;
}

Decision decision_of(const SpoolRecord& record) {
  const RecordEntry* entry = entry_of_decision(record);
  return entry == nullptr ? Decision::none : entry->decision;
}

std::string state_of(const SpoolRecord& record) {
  const Decision decision = decision_of(record);
  return decision == Decision::none ? "undecided" : name_of(decision);
}

AsWound as_wound_of(const SpoolRecord& record) {
  AsWound wound;
  wound.file = fmt::format("record {}", record.number);
  for (const RecordEntry& entry : record.entries) {
    for (const Reading& reading : entry.readings) {
      const auto same = std::find_if(wound.readings.begin(), wound.readings.end(),
                                     [&](const Reading& each) { return place_of(each) == place_of(reading); });
      same == wound.readings.end() ? wound.readings.push_back(reading) : put_over(*same, reading);
    }
  }
  std::stable_sort(wound.readings.begin(), wound.readings.end(),
                   [](const Reading& a, const Reading& b) { return place_of(a) < place_of(b); });
  return wound;
}

std::vector<FittedSetting> fitted_of(const SpoolRecord& record) {
  const auto found = std::find_if(record.entries.rbegin(), record.entries.rend(),
                                  [](const RecordEntry& entry) { return !entry.fitted.empty(); });
  return found == record.entries.rend() ? std::vector<FittedSetting>{} : found->fitted;
}

std::string hash_text(std::string_view bytes) {
  Hash hash;
  hash.add(bytes.data(), bytes.size());
  return fmt::format("{:016x}", hash.value());
}

bool is_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-' || text[0] == '-' || text[0] == '+') return false;
  const auto year = read_number<int>(text.substr(0, 4));
  const auto month = read_number<unsigned>(text.substr(5, 2)), day = read_number<unsigned>(text.substr(8, 2));
  if (!year || !month || !day || text.find('+') != std::string_view::npos) return false;
  return std::chrono::year_month_day(std::chrono::year(*year), std::chrono::month(*month), std::chrono::day(*day))
      .ok();
}

std::string new_identity() {
  std::random_device random;
  return fmt::format("{:08x}{:08x}{:08x}{:08x}", random(), random(), random(), random());
}

}  // namespace laywright
