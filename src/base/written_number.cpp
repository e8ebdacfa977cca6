#include "base/written_number.h"

#include <algorithm>
#include <array>
#include <string>

#include "base/number.h"
#include "base/spelling.h"

namespace laywright {
namespace {

// All that is a blank or an apostrophe as one character, which sets thousands apart and nothing else.
constexpr char gap = ' ';
std::string with_plain_gaps(std::string_view text) {
  constexpr std::array<std::string_view, 5> gaps{"\xC2\xA0", "\xE2\x80\xAF", "\xE2\x80\x89", "\xE2\x80\x99", "'"};
  std::string plain(text);
  for (const std::string_view each : gaps) {
    for (std::size_t at = plain.find(each); at != std::string::npos; at = plain.find(each, at + 1))
      plain.replace(at, each.size(), 1, gap);
  }
  return plain;
}

// "1,234,567" by `mark`: a group of one to three digits, then groups of three.
bool is_grouped(std::string_view whole, char mark) {
  const std::size_t first = std::min(whole.find(mark), whole.size());
  if (first == 0 || first > 3) return false;
  for (std::size_t i = 0; i < whole.size(); ++i) {
    const bool at_mark = i >= first && (i - first) % 4 == 0;
    if (at_mark ? whole[i] != mark : !is_digit(whole[i])) return false;
  }
  return first == whole.size() || (whole.size() - first) % 4 == 0;
}

std::string without(std::string_view text, char mark) {
  std::string rest(text);
  rest.erase(std::remove(rest.begin(), rest.end(), mark), rest.end());
  return rest;
}

// A number in its parts. `decimal`: where its decimal mark stands, npos where it has none.
struct Parts {
  std::string whole, fraction, tail;  // tail: the exponent
  char decimal = 0;                   // '.' or ',' where that is clear
  bool unclear = false;               // `whole` mark `fraction` may as well be a number of thousands
};

std::optional<Parts> parts_of(std::string_view text) {
  Parts parts;
  const std::string plain = with_plain_gaps(text);
  const std::size_t exponent = std::min(plain.find_first_of("eE"), plain.size());
  parts.tail = plain.substr(exponent);
  std::string body = plain.substr(0, exponent);
  std::string sign;
  if (!body.empty() && (body[0] == '-' || body[0] == '+')) {
    if (body[0] == '-') sign = "-";
    body.erase(0, 1);
  }
  const std::size_t last = body.find_last_of(".,");
  if (last == std::string::npos) {
    if (body.find(gap) != std::string::npos && !is_grouped(body, gap)) return std::nullopt;
    parts.whole = sign + without(body, gap);
    return parts;
  }
  const char mark = body[last], other = mark == '.' ? ',' : '.';
  std::string whole = body.substr(0, last);
  parts.fraction = body.substr(last + 1);
  if (!std::all_of(parts.fraction.begin(), parts.fraction.end(), is_digit)) return std::nullopt;
  if (whole.find(mark) != std::string::npos) {  // more than once: it sets thousands apart
    if (!is_grouped(body, mark)) return std::nullopt;
    parts.whole = sign + without(body, mark);
    parts.fraction.clear();
    parts.decimal = other;
    return parts;
  }
  for (const char each : {other, gap}) {
    if (whole.find(each) == std::string::npos) continue;
    if (!is_grouped(whole, each)) return std::nullopt;
    parts.whole = sign + without(whole, each);
    parts.decimal = mark;
    return parts;
  }
  if (!std::all_of(whole.begin(), whole.end(), is_digit)) return std::nullopt;
  parts.unclear =
      parts.fraction.size() == 3 && !whole.empty() && whole.size() <= 3 && whole[0] != '0' && parts.tail.empty();
  parts.decimal = mark;
  parts.whole = sign + whole;
  return parts;
}

}  // namespace

DecimalMark decimal_mark_of(const std::vector<std::string_view>& numbers) {
  bool point = false, comma = false;
  for (const std::string_view each : numbers) {
    const std::optional<Parts> parts = parts_of(each);
    if (!parts || parts->unclear) continue;
    point = point || parts->decimal == '.';
    comma = comma || parts->decimal == ',';
  }
  if (point && comma) return DecimalMark::both;
  return point ? DecimalMark::point : comma ? DecimalMark::comma : DecimalMark::untold;
}

WrittenNumber read_written_number(std::string_view text, DecimalMark mark) {
  const std::optional<Parts> parts = parts_of(text);
  if (!parts) return {};
  if (parts->unclear) {
    const bool clear = parts->decimal == '.' ? mark == DecimalMark::point || mark == DecimalMark::untold
                                             : mark == DecimalMark::comma;
    if (!clear) return {std::nullopt, true};
  }
  const std::string point = parts->fraction.empty() ? "" : "." + parts->fraction;
  return {read_number<double>(parts->whole + point + parts->tail), false};
}

}  // namespace laywright
