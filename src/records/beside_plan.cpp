#include "records/beside_plan.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace laywright {
namespace {

struct QuantityWords {
  const char *words, *name;
  bool in_mm;
};
constexpr std::array<QuantityWords, read_quantities> all_words{{{"turns of the layer", "layer_turns", false},
                                                                {"turns counted", "turns", false},
                                                                {"length counted", "length", true},
                                                                {"diameter, left", "diameter_left", true},
                                                                {"diameter, middle", "diameter_middle", true},
                                                                {"diameter, right", "diameter_right", true},
                                                                {"width of the layer", "width", true}}};

const QuantityWords& of(ReadQuantity quantity) { return all_words[static_cast<std::size_t>(quantity)]; }

std::array<std::optional<double>, read_quantities> values_of(const Reading& reading) {
  return {reading.layer_turns,    reading.counter_turns,  reading.counter_length_mm, reading.diameter_mm[0],
          reading.diameter_mm[1], reading.diameter_mm[2], reading.width_mm};
}
std::array<double, read_quantities> values_of(const PlannedLayer& planned) {
  return {planned.layer_turns,
          planned.turns,
          planned.length_mm,
          planned.outer_diameter_mm[0],
          planned.outer_diameter_mm[1],
          planned.outer_diameter_mm[2],
          planned.width_mm};
}

// A wind that ends within a layer has not ended this layer.
const PlannedLayer* planned_at(const SpoolRecord& record, const Reading& reading) {
  const auto found = std::find_if(record.planned.begin(), record.planned.end(), [&](const PlannedLayer& each) {
    return reading.at_end ? each.at_end : reading.layer == each.layer;
  });
  return found == record.planned.end() ? nullptr : &*found;
}

}  // namespace

const char* words_for(ReadQuantity quantity) { return of(quantity).words; }
const char* name_of(ReadQuantity quantity) { return of(quantity).name; }
bool is_in_mm(ReadQuantity quantity) { return of(quantity).in_mm; }

std::vector<BesidePlan> readings_beside_plan(const SpoolRecord& record) {
  std::vector<BesidePlan> all;
  for (const Reading& reading : as_wound_of(record).readings) {
    const PlannedLayer* planned = planned_at(record, reading);
    const auto measured = values_of(reading);
    for (std::size_t i = 0; i < read_quantities; ++i) {
      const auto quantity = static_cast<ReadQuantity>(i);
      // Of what lies between layers the counter says where it is.
      const bool says_where = !reading.layer && !reading.at_end &&
                              quantity == (reading.counter_turns ? ReadQuantity::turns : ReadQuantity::length);
      if (!measured[i] || says_where) continue;
      BesidePlan each{place_words(reading), quantity, *measured[i], std::nullopt};
      if (planned != nullptr) each.planned = values_of(*planned)[i];
      all.push_back(std::move(each));
    }
  }
  return all;
}

std::optional<double> outermost_difference(const SpoolRecord& record, ReadQuantity quantity) {
  const std::vector<BesidePlan> all = readings_beside_plan(record);
  const auto found = std::find_if(all.rbegin(), all.rend(), [&](const BesidePlan& each) {
    return each.quantity == quantity && each.planned.has_value();
  });
  if (found == all.rend()) return std::nullopt;
  return found->measured - *found->planned;
}

}  // namespace laywright
