// How long it takes to read texts that nobody who means well would write, of two lengths: where the longer one takes more
// than its length times as long, reading grows faster than the text. Processor time, the
// least of several.
#include <algorithm>
#include <ctime>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "plan/plan_file.h"

namespace {

using namespace laywright;

constexpr int runs = 7;
constexpr std::size_t kilobytes = 100, longer = 9;  // the longer text is below the limit of 1 MB

std::string repeated(std::string_view piece, std::size_t bytes) {
  std::string text = "format = \"lay-plan 1\"\n";
  while (text.size() < bytes) text += piece;
  return text;
}

std::string numbered_tables(std::size_t bytes) {
  std::string text = "format = \"lay-plan 1\"\n";
  for (int i = 0; text.size() < bytes; ++i) text += fmt::format("[t{}]\n", i);
  return text;
}

double ns_per_byte(const std::string& text) {
  double least = 1e300;
  for (int i = 0; i < runs; ++i) {
    const std::clock_t start = std::clock();
    const Result<Plan> plan = plan_from_text(text, "a.lay.toml");
    least = std::min(least, static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
    if (plan.ok()) fmt::print("this was to be no plan\n");
  }
  return 1e9 * least / static_cast<double>(text.size());
}

}  // namespace

int main() {
  struct Kind {
    const char* name;
    std::string (*text)(std::size_t bytes);
  };
  const std::vector<Kind> kinds{
      {"comments", [](std::size_t bytes) { return repeated("# nothing\n", bytes); }},
      {"open brackets", [](std::size_t bytes) { return repeated("[", bytes); }},
      {"steps without values", [](std::size_t bytes) { return repeated("[[wind.step]]\n", bytes); }},
      {"tables that nobody knows", numbered_tables},
      {"one long key", [](std::size_t bytes) { return repeated("a", bytes); }},
      {"digits of one number", [](std::size_t bytes) { return repeated("9", bytes - 30).insert(22, "a = 0."); }}};
  for (const Kind& kind : kinds) {
    const double brief = ns_per_byte(kind.text(1000 * kilobytes));
    const double ample = ns_per_byte(kind.text(1000 * kilobytes * longer));
    fmt::print("{:<26} {} kB / {} kB: {:.2f} times as long a byte ({:.0f} / {:.0f} ns)\n", kind.name,
               kilobytes * longer, kilobytes, ample / brief, ample, brief);
  }
  return 0;
}
