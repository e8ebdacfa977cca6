// The sheet for a customer, read back by pdftotext and pdfinfo (Poppler).
#include "paper/customer_sheet.h"

#include <catch2/catch.hpp>

#include "figures/hand_wound.h"
#include "paper/cairo_sink.h"
#include "paper/paper_text.h"
#include "paper/typeset.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

struct Held {
  Plan plan = hand_plan();
  Build build = hand_build();
  Measurements measurements = hand_measurements();
  CustomerFigures figures;

  Held() {
    figures.capacity = {7.5e6, 7.271e6, 7.729e6};
    figures.diameter = {24.5, 24.42, 24.58};
    figures.wound = laid_figures(build, measurements);
    figures.mass_kg = 0.0625;
    figures.model_margin = 0.03;
  }
  [[nodiscard]] CustomerSheet sheet(CustomerLetter letter) const {
    return {plan, build, measurements, addressed(std::move(letter), plan), customer_summary(plan, figures)};
  }
};

// Words as wide as they come, as many as are allowed.
std::string wide(std::size_t characters) {
  std::string text;
  while (text.size() + 10 <= characters) text += "WIDEWORDS ";
  return text + std::string(characters - text.size(), 'W');
}

CustomerLetter fullest() {
  CustomerLetter letter;
  letter.title = wide(longest_title);
  letter.customer = letter.sender = letter.date = wide(longest_name_text);
  letter.greeting = wide(longest_greeting);
  letter.ware = wide(longest_ware);
  return letter;
}

Bitmap grey(int width, int height) {
  return {{}, width, height, std::vector<std::uint8_t>(static_cast<std::size_t>(4 * width * height), 120)};
}

void expect_whole(const Drawing& page) {
  for (const Drawing::Item& item : page.items) {
    if (const Text* text = std::get_if<Text>(&item)) {
      CAPTURE(text->words);
      const double width = width_of(text->words, {text->height_mm, text->bold, text->align, text->color});
      CHECK(text->words.find("\u2026") == std::string::npos);
      CHECK(text->words.find("...") == std::string::npos);
      if (!text->upward) CHECK(text->at.x + (text->align == Align::start ? width : 0.0) <= page.width_mm - 10.0);
      CHECK(text->at.y <= page.height_mm - 10.0);
      CHECK(text->at.y >= 10.0);
    }
    if (const Bitmap* bitmap = std::get_if<Bitmap>(&item)) {
      CHECK(bitmap->box.height > 15.0);
      CHECK(bitmap->box.bottom() <= page.height_mm - 10.0);
    }
  }
}

}  // namespace

TEST_CASE("the sheet for a customer is one page with the sentence, the figures and the letter") {
  const Held held;
  CustomerLetter letter;
  letter.title = "Your spool";
  letter.customer = "Rowan Mills";
  letter.greeting = "With thanks for your order.";
  CustomerSheet sheet = held.sheet(letter);
  const std::string pdf = to_pdf({draw_customer_sheet(sheet)});
  CHECK_THAT(read_pdf(pdf, "pdfinfo", ""),
             Contains("Pages:           1") && Contains("(A4)") && Contains("Your spool"));
  const std::string text = single_spaced(text_of(pdf, 1));
  for (const std::string& words : {sheet.summary.holds, sheet.summary.wound, sheet.summary.sure, sheet.summary.care,
                                   letter.greeting, std::string("For Rowan Mills")}) {
    CAPTURE(words);
    CHECK_THAT(text, Contains(words));
  }
  for (const auto& [name, value] : sheet.summary.rows) CHECK_THAT(text, Contains(name + " " + value));
  CHECK_THAT(text, !Contains("verdict") && !Contains("gap"));
  sheet.verdict = "Good: nothing is over its limit";
  CHECK_THAT(single_spaced(text_of(to_pdf({draw_customer_sheet(sheet)}), 1)), Contains(sheet.verdict));
}

TEST_CASE("the sheet for a customer has room for the longest letter, on both papers, in legible print") {
  const Held held;
  for (const Paper paper : {Paper::a4, Paper::letter}) {
    CustomerSheet sheet = held.sheet(fullest());
    sheet.paper = paper;
    sheet.verdict = wide(160);
    sheet.logo = grey(60, 200);
    sheet.picture = grey(1500, 1100);
    const Drawing page = draw_customer_sheet(sheet);
    expect_whole(page);
    for (const Drawing::Item& item : page.items)
      if (const Text* text = std::get_if<Text>(&item)) CHECK(text->height_mm >= smallest_print_mm);
    const auto is_large = [](const Drawing::Item& item) {
      const Bitmap* bitmap = std::get_if<Bitmap>(&item);
      return bitmap != nullptr && bitmap->box.height >= 45.0;
    };
    CHECK(std::any_of(page.items.begin(), page.items.end(), is_large));
    CHECK_THAT(read_pdf(to_pdf({page}), "pdfinfo", ""), Contains("Pages:           1"));
  }
  // One word as long as a title may be.
  CustomerLetter letter;
  letter.title = std::string(60, 'w');
  expect_whole(draw_customer_sheet(held.sheet(letter)));
}
