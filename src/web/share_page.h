// One wind as a single HTML file: the program that lays and draws it in a browser, and for browsers that cannot, and
// for paper, pictures and tables. It loads nothing from anywhere.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "lay/build.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"
#include "verdict/verdict.h"
#include "web/customer_part.h"

namespace laywright {

// The page without a wind, as src/web/page/assemble.mjs puts it together; empty when the program was built without.
[[nodiscard]] std::string_view share_page_template();

struct SharePicture {
  std::string media_type;  // "image/png"
  std::string bytes;
  std::string caption;
};

struct SharedWind {
  std::string_view plan_text;  // UTF-8, as in its file
  const Plan& plan;
  const Build& build;
  const Measurements& measurements;
  const WindVerdict& verdict;
  std::vector<SharePicture> pictures;
  const CustomerPage* customer = nullptr;  // none: the page is for those who wind
};

// The page of a wind. Whatever text the plan holds is shown as text: it cannot become a tag, a script or a link.
[[nodiscard]] std::string share_page(std::string_view page_template, const SharedWind& wind);

}  // namespace laywright
