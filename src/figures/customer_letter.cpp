#include "figures/customer_letter.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/readable.h"
#include "base/spelling.h"
#include "figures/customer_words.h"
#include "figures/figures.h"
#include "plan/flatten.h"
#include "plan/plan_writer.h"

namespace laywright {
namespace {

std::string one_line(std::string text) {
  std::replace_if(
      text.begin(), text.end(), [](char c) { return c == '\n' || c == '\r' || c == '\t'; }, ' ');
  return visible(text);
}

}  // namespace

Issues check_letter(const CustomerLetter& letter) {
  Issues issues;
  const auto hold = [&](const char* name, const std::string& text, std::size_t most) {
    const std::size_t count = character_count(text);
    if (count <= most) return;
    Issue issue;
    issue.key = name;
    issue.value = readable(text);
    issue.allowed = fmt::format("up to {} characters", most);
    issue.what = fmt::format("the {} has {} characters, for which one page has no room; shorten it", name, count);
    issues.push_back(std::move(issue));
  };
  hold("title", letter.title, longest_title);
  hold("customer", letter.customer, longest_name_text);
  hold("sender", letter.sender, longest_name_text);
  hold("date", letter.date, longest_name_text);
  hold("greeting", letter.greeting, longest_greeting);
  hold("word", letter.ware, longest_ware);
  return issues;
}

CustomerLetter addressed(CustomerLetter letter, const Plan& plan) {
  if (letter.title.empty()) letter.title = title_of(plan);
  if (letter.customer.empty()) letter.customer = plan.order().customer;
  for (std::string* text :
       {&letter.title, &letter.customer, &letter.sender, &letter.date, &letter.greeting, &letter.ware})
    *text = one_line(std::move(*text));
  return letter;
}

std::string address_line(const CustomerLetter& letter) {
  std::string line;
  const auto add = [&](const char* before, const std::string& text) {
    if (!text.empty()) line += fmt::format("{}{}{}", line.empty() ? "" : ", ", before, text);
  };
  add("for ", letter.customer);
  add("from ", letter.sender);
  add("", letter.date);
  return capitalised(line);
}

std::string customer_plan_text(std::string_view text, const Plan& plan, const CustomerLetter& letter) {
  if (letter.notes) {
    PlanDraft after = plan.asked();
    after.title = letter.title;
    return flattened(write_plan(text, plan.asked(), after), after);
  }
  PlanDraft draft = without_entries(plan.draft());
  draft.file.clear();
  draft.title = letter.title;
  draft.notes.clear();
  draft.order = {};
  draft.machine = {};
  return write_plan(draft);
}

}  // namespace laywright
