// How the double strokes of a crossed wind lie, in words: the same in the command, the window and the share page.
#pragma once

#include <array>
#include <string>

#include "pattern/pattern_table.h"

namespace laywright {

[[nodiscard]] bool is_crossed(const PatternRow& row);

// "1-80", "9 on" where the wind ends before them.
[[nodiscard]] std::string layers_text(const PatternRow& row);

// "15", "31/2": turns over double strokes.
[[nodiscard]] std::string fraction_text(const Displacement& near);

// "1.10 behind", "0.93 ahead", "0.00".
[[nodiscard]] std::string beside_text(double ahead, int decimals);

// A line of its table: layers, pitch, turns to a double stroke, diameters from and to, verdict.
using PatternCells = std::array<std::string, 5>;
[[nodiscard]] PatternCells pattern_heads();
[[nodiscard]] PatternCells pattern_cells(const PatternRow& row, bool inch);

// "traverse.pitch 0.254 mm instead of 0.26 mm: 12.3456 turns, 0.35 d ahead".
[[nodiscard]] std::string safe_words(const PatternRow& row, const SafeSetting& safe, bool inch);

// Sentences, the first without its capital: "a ribbon. The spool turns ...".
[[nodiscard]] std::string pattern_words(const PatternRow& row, double gap_d);

// That no pitch is safe, where one was looked for; else empty.
[[nodiscard]] std::string no_pitch_words(const PatternRow& row);

// That there are no patterns of a stepped guide.
[[nodiscard]] std::string stepped_words();

// What it all does not know; of ribbons, by how much they stand over the estimate of the diameter.
[[nodiscard]] std::string estimate_words(const PatternTable& table);

}  // namespace laywright
