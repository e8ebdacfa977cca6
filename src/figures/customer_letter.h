// What a sender writes to a customer beside the figures, and what of the plan goes along.
#pragma once

#include <string>
#include <string_view>

#include "base/issue.h"
#include "plan/lay_plan.h"

namespace laywright {

struct CustomerLetter {
  std::string title;     // empty: the plan's
  std::string customer;  // empty: the plan's order.customer
  std::string sender, date, greeting;
  std::string ware;      // a word of one's own for what is wound
  bool verdict = false;  // told, too
  bool notes = false;    // notes and comments of the plan go along

  friend bool operator==(const CustomerLetter&, const CustomerLetter&) = default;
};

// In characters: what has room on one page. A title has that of a plan.
inline constexpr std::size_t longest_name_text = 60;  // customer, sender, date
inline constexpr std::size_t longest_greeting = 600;

// What is too long, by its name ("greeting"); empty when all is well.
[[nodiscard]] Issues check_letter(const CustomerLetter& letter);

// The letter as it is set: what is empty filled in from the plan, line breaks become spaces, and all visible().
[[nodiscard]] CustomerLetter addressed(CustomerLetter letter, const Plan& plan);

// "For Rowan Mills, from Corder & Sons, 2026-11-29": what of it there is.
[[nodiscard]] std::string address_line(const CustomerLetter& letter);

// The plan as it goes to a customer, standing alone: the letter's title in place of its own, without notes, comments, order
// and the machine's dials, whose settings stand as they are laid; with notes and comments where the letter says so. It lays the
// same wind. Precondition: `text` was read as the plan.
[[nodiscard]] std::string customer_plan_text(std::string_view text, const Plan& plan, const CustomerLetter& letter);

}  // namespace laywright
