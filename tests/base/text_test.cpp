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
  CHECK(readable("\xc2\x9b") == "\\u009b");              // a control character of its own
  CHECK(readable("\xff\xc3") == "\\xff\\xc3");           // no UTF-8
  CHECK(readable("\xed\xa0\x80") == "\\xed\\xa0\\x80");  // a surrogate
  CHECK(readable(std::string(1000, 'x')).size() < 70);
}

TEST_CASE("what is visible turns no writing and breaks no line, and lines stay lines") {
  // Right-to-left override, Arabic letter mark, first strong isolate, line separator: Unicode's own numbers.
  CHECK(visible("a\xe2\x80\xae"
                "b\xd8\x9c\xe2\x81\xa8\xe2\x80\xa8") == "a\\u202eb\\u061c\\u2068\\u2028");
  CHECK(visible("\x7f\t\n") == "\\u007f\\x09\\x0a");
  CHECK(visible(std::string(1000, 'x')) == std::string(1000, 'x'));
  CHECK(visible("\xd7\xa9\xd7\x9c") == "\xd7\xa9\xd7\x9c");  // letters that are written from right to left
  CHECK(visible_lines("one\n\x1btwo\n\n") == "one\n\\x1btwo\n\n");
  CHECK(visible_lines("") == "");
}

TEST_CASE("text that is too long ends in an ellipsis, between characters") {
  const auto within = [](std::size_t most) {
    return [=](const std::string& text) { return character_count(text) <= most; };
  };
  CHECK(character_count("\xc3\xa9\xe2\x82\xac\xf0\x9f\x98\x80") == 3);
  CHECK(shortened("abcdef", within(6)) == "abcdef");
  CHECK(shortened("abcdef", within(4)) == "abc\u2026");
  CHECK(shortened("\xe2\x82\xac\xe2\x82\xac\xe2\x82\xac", within(2)) == "\xe2\x82\xac\u2026");
  CHECK(shortened("abc", within(0)).empty());
  CHECK(readable("\xd0\x96\xd0\x96\xd0\x96", 2) == "\xd0\x96\xd0\x96...");
}

TEST_CASE("bytes that are not UTF-8 are replaced") {
  CHECK(valid_utf8("plain \xc3\xa9\n") == "plain \xc3\xa9\n");
  CHECK(valid_utf8("a\xff"
                   "b\xc3") ==
        "a\xef\xbf\xbd"
        "b\xef\xbf\xbd");
}
