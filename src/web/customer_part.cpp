#include "web/customer_part.h"

#include <fmt/format.h>

#include "web/html.h"

namespace laywright {

std::string logo_part(const CustomerPage& customer) {
  if (customer.logo.empty()) return "";
  return fmt::format("<img class=\"logo\" src=\"{}\" alt=\"{}\">\n", data_uri("image/png", customer.logo),
                     html_text(customer.letter.sender));
}

std::string letter_part(const CustomerPage& customer) {
  const CustomerSummary& told = customer.summary;
  std::string rows;
  for (const auto& [name, value] : told.rows)
    rows += fmt::format("<tr><th scope=\"row\">{}</th><td>{}</td></tr>\n", html_text(name), html_text(value));
  const std::string greeting = customer.letter.greeting.empty() ? ""
                                                                : fmt::format("<p class=\"greeting\">{}</p>\n",
                                                                              html_text(customer.letter.greeting));
  return greeting +
         fmt::format(
             "<p class=\"told\"><span class=\"holds\">{}</span> <span class=\"wound\">{}</span></p>\n<table "
             "class=\"told-rows\">\n<tbody>\n{}</tbody>\n</table>\n<p class=\"sure\">{}</p>\n<p "
             "class=\"care\">{}</p>\n",
             html_text(told.holds), html_text(told.wound), rows, html_text(told.sure), html_text(told.care));
}

}  // namespace laywright
