#include "base/readable.h"
#include "base/text_distance.h"

#include <catch2/catch.hpp>

using namespace laywright;

TEST_CASE("text distance counts inserted, deleted, replaced and swapped characters") {
  // kitten/sitting = 3 is the usual example of the Levenshtein distance; the rest by hand.
  CHECK(text_distance("kitten", "sitting") == 3);
  CHECK(text_distance("", "abc") == 3);
  CHECK(text_distance("abc", "") == 3);
  CHECK(text_distance("pitch", "pitch") == 0);
  CHECK(text_distance("pithc", "pitch") == 1);
  CHECK(text_distance("ptch", "pitch") == 1);
  // Optimal string alignment edits no part twice: "ca" to "abc" is 3, not 2.
  CHECK(text_distance("ca", "abc") == 3);
}

TEST_CASE("the nearest word is offered only if it may be meant") {
  const std::vector<std::string> known = {"barrel_diameter", "flange_diameter", "inside_width", "mass"};
  CHECK(nearest_word("barel_diameter", known) == "barrel_diameter");
  CHECK(nearest_word("insidewidth", known) == "inside_width");
  CHECK(nearest_word("MASS", known) == "mass");
  CHECK(nearest_word("colour", known).empty());
  CHECK(nearest_word("", known).empty());
  CHECK(nearest_word(std::string(100000, 'a'), known).empty());
}

TEST_CASE("text is shown without control characters and without end") {
  CHECK(readable("0.26 mm") == "0.26 mm");
  CHECK(readable("\xc3\xa9 \xe2\x82\xac \xf0\x9f\x98\x80") == "\xc3\xa9 \xe2\x82\xac \xf0\x9f\x98\x80");
  CHECK(readable("a\x1b[2Jb\n") == "a\\x1b[2Jb\\x0a");
  CHECK(readable(std::string("\0", 1)) == "\\x00");
  CHECK(readable("\xc2\x9b") == "\\xc2\\x9b");           // a control character of its own
  CHECK(readable("\xff\xc3") == "\\xff\\xc3");           // no UTF-8
  CHECK(readable("\xed\xa0\x80") == "\\xed\\xa0\\x80");  // a surrogate
  CHECK(readable(std::string(1000, 'x')).size() < 70);
}

TEST_CASE("bytes that are not UTF-8 are replaced") {
  CHECK(valid_utf8("plain \xc3\xa9\n") == "plain \xc3\xa9\n");
  CHECK(valid_utf8("a\xff"
                   "b\xc3") ==
        "a\xef\xbf\xbd"
        "b\xef\xbf\xbd");
}
