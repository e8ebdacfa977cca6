#include "app/customer_options.h"

#include "base/today.h"

namespace laywright {

void add_customer_options(CommandLine command, CustomerOptions& options, bool notes) {
  command
      .add_option(
          "--for", options.whom,
          "Whom it is for: the winder, with settings, verdict and findings; or a customer, in a buyer's words")
      .type_name("winder|customer")
      .check(one_of({"winder", "customer"}))
      .capture_default_str();
  const auto text = [&](const char* name, std::string& value, const char* help, const char* type = "TEXT") {
    const CommandOption option = command.add_option(name, value, help).type_name(type);
    options.of_customer_alone.push_back(option);
    return option;
  };
  CustomerLetter& letter = options.letter;
  letter.date = today();
  text("--title", letter.title, "For a customer: the title, instead of the plan's");
  text("--customer", letter.customer, "For a customer: who it is for, instead of the plan's order.customer");
  text("--sender", letter.sender, "For a customer: who sends it");
  text("--date", letter.date, "For a customer: the date as it is to stand there (today's by default)");
  text("--greeting", letter.greeting, "For a customer: some sentences of your own, up to 600 characters");
  text("--word", letter.ware, "For a customer: what is wound, in a word of your own, like \"bell wire\"");
  options.logo_option =
      text("--logo", options.logo, "For a customer: your mark, a PNG or a plain SVG of up to 2 MB; it is drawn anew",
           "FILE.png|svg");
  const auto flag = [&](const char* name, bool& value, const char* help) {
    options.of_customer_alone.push_back(command.add_flag(name, value, help));
  };
  flag("--verdict", letter.verdict, "For a customer: tell the verdict, too");
  if (notes) flag("--notes", letter.notes, "For a customer: leave the plan's notes and comments in the page");
}

Issues misplaced(const CustomerOptions& options) {
  Issues issues;
  if (options.for_customer()) return issues;
  for (CommandOption option : options.of_customer_alone) {
    if (!option.given()) continue;
    Issue issue;
    issue.key = option.name();
    issue.allowed = "with --for customer only";
    issue.what = "this is for a customer; add --for customer, or leave it out";
    issues.push_back(issue);
  }
  return issues;
}

}  // namespace laywright
