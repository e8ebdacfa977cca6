// Prints the words of a lay plan as a dictionary for the fuzzer: keys, tables, units and choices, as the reader
// knows them.
#include <set>
#include <string>

#include <fmt/format.h>

#include "base/quantity.h"
#include "plan/dial_text.h"
#include "plan/fields.h"

using namespace laywright;

namespace {

template <class Owner>
void collect(const std::vector<Field<Owner>>& fields, std::set<std::string>& words) {
  for (const auto& field : fields) {
    words.insert(fmt::format("\\x0a{} = ", field.key));
    words.insert(fmt::format("\\x0a[{}]\\x0a", field.table));
    for (const std::string& choice : field.choices) words.insert(choice);
    if (field.kind != FieldKind::quantity) continue;
    for (const Unit* unit : units_of(field.dimension)) words.insert(fmt::format("2 {}\\x22", unit->name));
  }
}

}  // namespace

int main() {
  std::set<std::string> words = {"format = \\x22lay-plan 1\\x22",
                                 "title = ",
                                 "notes = ",
                                 "[[wind.step]]",
                                 "step = [",
                                 "held",
                                 "nan",
                                 "inf",
                                 "\\x22\\x22\\x22",
                                 "\\x27\\x27\\x27",
                                 "\\x0d\\x0a",
                                 "\\xef\\xbb\\xbf",
                                 "{ ",
                                 " }",
                                 "\\\\u0000",
                                 "1e400",
                                 "0x",
                                 "[wind]",
                                 "[takeup]"};
  collect(plan_fields(), words);
  collect(step_fields(), words);
  for (const std::string& key : dial_keys()) words.insert(fmt::format("\\x0a{} = ", key));
  for (const DialPlace& place : dial_places())
    words.insert(fmt::format("\\x0a[{}.{}]\\x0a", dials_table, place.name));
  words.insert(fmt::format("\\x0a[{}]\\x0a", counter_table));
  words.insert(fmt::format("\\x0a[{}]\\x0a", order_table));
  for (const OrderField& field : order_fields()) words.insert(fmt::format("\\x0a{} = ", field.key));
  for (const std::string& word : words) fmt::print("\"{}\"\n", word);
}
