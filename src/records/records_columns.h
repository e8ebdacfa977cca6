// The columns of a table of records. Inside the folder only.
#pragma once

#include <array>
#include <string_view>

namespace laywright {

inline constexpr std::string_view records_format = "lay-records 1";

inline constexpr std::array<std::string_view, 42> records_columns{records_format,
                                                                  "record",
                                                                  "entry",
                                                                  "layer",
                                                                  "end",
                                                                  "layer_turns",
                                                                  "counter_turns",
                                                                  "counter_length_mm",
                                                                  "counter_reading",
                                                                  "left_mm",
                                                                  "middle_mm",
                                                                  "right_mm",
                                                                  "width_mm",
                                                                  "setting",
                                                                  "planned",
                                                                  "value",
                                                                  "sigma",
                                                                  "told",
                                                                  "date",
                                                                  "by",
                                                                  "program",
                                                                  "decision",
                                                                  "reason",
                                                                  "note",
                                                                  "kind",
                                                                  "caption",
                                                                  "file",
                                                                  "size",
                                                                  "hash",
                                                                  "spool",
                                                                  "machine",
                                                                  "order",
                                                                  "title",
                                                                  "plan_file",
                                                                  "revision",
                                                                  "fidelity",
                                                                  "seed",
                                                                  "greatest_diameter_mm",
                                                                  "inside_width_mm",
                                                                  "identity",
                                                                  "plan",
                                                                  "written"};

}  // namespace laywright
