// A verdict in words: the same in the summary, the JSON document, the window, the set-up sheet and the share page.
#pragma once

#include <string>

#include "verdict/verdict.h"

namespace laywright {

// "Do not wind (this draw): the valley at the right flange is 9.62 fiber diameters deep; the limit is 1 fiber diameter. First:
// set the right stop nearer to the flange (now 1.2 mm)."
// Over draws: "Good (each of 5 draws): ...", "Marginal (the worst of 5 draws; good in 3): ...".
[[nodiscard]] std::string verdict_line(const WindVerdict& verdict);

// That one build is one draw, or over which draws it was judged.
[[nodiscard]] std::string draw_words(const Build& build, const WindVerdict& verdict);

// What a check is of, with its side: "valley, right flange". Stable, as in the JSON document.
[[nodiscard]] std::string name_of(const Check& check);

// The same within a sentence: "valley at the right flange".
[[nodiscard]] std::string spoken_name(const Check& check);

// "d", "mm", "%", "per km", "N", "rpm", "A", "times".
[[nodiscard]] const char* unit_of(Weighed what);

// "0.51 d"; "1 d at most"; "0.49 d".
[[nodiscard]] std::string value_text(const Check& check);
[[nodiscard]] std::string limit_text(const Check& check);
[[nodiscard]] std::string margin_text(const Check& check);

// What a check says, as a sentence without its stop: "the valley at the right flange is 9.62 fiber diameters deep; the limit is
// 1 fiber diameter".
[[nodiscard]] std::string sentence_of(const Check& check);

// Of a good wind: "every figure keeps its limit with room to spare; nearest to its limit is the valley at the right flange, 0.51 d
// of 1 d at most".
[[nodiscard]] std::string nearest_words(const Check& check);

// By whose usual limits the wind was weighed: "a fiber", "a wire", "a crossed wind".
[[nodiscard]] std::string weighed_as(const Plan& plan);

}  // namespace laywright
