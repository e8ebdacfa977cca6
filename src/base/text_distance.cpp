#include "base/text_distance.h"

#include <algorithm>
#include <numeric>

#include "base/spelling.h"

namespace laywright {
namespace {

constexpr std::size_t longest_word = 64;

}  // namespace

std::size_t text_distance(std::string_view a, std::string_view b) {
  // Rows of the usual table; a swap looks two rows back.
  std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  std::iota(last.begin(), last.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = a[i - 1] == b[j - 1] ? 0 : 1;
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + change});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
    }
    std::swap(before, last);
    std::swap(last, row);
  }
  return last[b.size()];
}

std::string nearest_word(std::string_view word, const std::vector<std::string>& known) {
  if (word.empty() || word.size() > longest_word) return "";
  const std::string wanted = lower(word);
  std::string best;
  std::size_t least = std::max<std::size_t>(1, word.size() / 3) + 1;
  for (const std::string& candidate : known) {
    const std::size_t distance = text_distance(wanted, lower(candidate));
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

}  // namespace laywright
