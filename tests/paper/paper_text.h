// The text of a PDF as a foreign reader sees it (pdftotext of Poppler), and every figure in it held against a JSON
// document.
#pragma once

#include <array>
#include <cmath>
#include <cstdio>
#include <memory>
#include <regex>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "temporary_folder.h"

namespace laywright {

// Standard output of a program that is given a file of that name and these bytes.
inline std::string read_by(const std::string& before, const char* name, const std::string& bytes,
                           const std::string& after) {
  const testing::TemporaryFolder folder;
  const std::string command = before + " '" + folder.file(name, bytes) + "' " + after;
  const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), &pclose);
  std::string text;
  std::array<char, 4096> buffer{};
  while (const std::size_t count = std::fread(buffer.data(), 1, buffer.size(), pipe.get())) {
    text.append(buffer.data(), count);
  }
  return text;
}

inline std::string read_pdf(const std::string& pdf, const std::string& before, const std::string& after) {
  return read_by(before, "sheet.pdf", pdf, after);
}

inline std::string text_of(const std::string& pdf, int page) {
  const std::string number = std::to_string(page);
  return read_pdf(pdf, "pdftotext -layout -f " + number + " -l " + number, "-");
}

inline std::string single_spaced(const std::string& text) {
  return std::regex_replace(text, std::regex("\\s+"), " ");
}

// A figure of the document: its value and the unit that its key names ("" for mm, deg and plain numbers).
struct Leaf {
  double value = 0.0;
  std::string unit;
};

inline std::string unit_of_key(const std::string& key) {
  static const std::array<const char*, 15> endings{"_mm_per_s2", "_mm_per_s", "_g_per_km", "_kg_m2", "_per_min",
                                                   "_rpm",       "_MPa",      "_Nmm",      "_Nm",    "_kg",
                                                   "_N",         "_A",        "_W",        "_s",     "_m"};
  for (const std::string ending : endings) {
    if (key.size() > ending.size() && key.compare(key.size() - ending.size(), ending.size(), ending) == 0) {
      return ending.substr(1);
    }
  }
  return "";
}

inline void collect(const nlohmann::json& node, const std::string& unit, std::vector<Leaf>& leaves) {
  if (node.is_number()) leaves.push_back({node.get<double>(), unit});
  if (node.is_array()) {
    for (const auto& item : node) collect(item, unit, leaves);
  }
  if (!node.is_object()) return;
  for (const auto& [key, value] : node.items()) {
    const std::string own = unit_of_key(key);
    collect(value, own.empty() ? unit : own, leaves);
  }
}

// What a unit on paper is of a unit of the document. Exact by the yard and pound of 1959 and standard gravity.
struct Conversion {
  const char* paper;
  const char* document;
  double factor;
};
inline const std::vector<Conversion>& conversions() {
  static const double lbf = 4.4482216152605;
  static const std::vector<Conversion> all{{"kg cm\u00B2", "kg_m2", 1e4},
                                           {"lb in\u00B2", "kg_m2", 1.0 / (0.45359237 * 0.0254 * 0.0254)},
                                           {"lbf in", "Nm", 1000.0 / (lbf * 25.4)},
                                           {"N m", "Nm", 1.0},
                                           {"ft/min", "mm_per_s", 60.0 / 304.8},
                                           {"m/min", "mm_per_s", 0.06},
                                           {"mm/s", "mm_per_s", 1.0},
                                           {"in/s", "mm_per_s", 1.0 / 25.4},
                                           {"per min", "per_min", 1.0},
                                           {"rpm", "rpm", 1.0},
                                           {"MPa", "MPa", 1.0},
                                           {"psi", "MPa", 25.4 * 25.4 / lbf},
                                           {"lbf", "N", 1.0 / lbf},
                                           {"lb", "kg", 1.0 / 0.45359237},
                                           {"kg", "kg", 1.0},
                                           {"km", "m", 1e-3},
                                           {"mm", "", 1.0},
                                           {"in", "", 1.0 / 25.4},
                                           {"ft", "m", 1.0 / 0.3048},
                                           {"deg", "", 1.0},
                                           {"times", "", 1.0},
                                           {"%", "", 100.0},
                                           {"N", "N", 1.0},
                                           {"A", "A", 1.0},
                                           {"W", "W", 1.0},
                                           {"s", "s", 1.0},
                                           {"m", "m", 1.0}};
  return all;
}

// True if the figure is this value rounded to its last shown digit (a half either way, for ties).
inline bool shows(const std::string& figure, double value) {
  std::string digits;
  for (const char c : figure) {
    if (c != ',') digits += c;
  }
  const std::size_t point = digits.find('.');
  const double decimals = point == std::string::npos ? 0.0 : static_cast<double>(digits.size() - point - 1);
  return std::abs(std::stod(digits) - value) <= 0.5000001 * std::pow(10.0, -decimals);
}

inline bool stands_in(const std::string& figure, const std::string& paper_unit, const std::vector<Leaf>& leaves) {
  for (const Conversion& conversion : conversions()) {
    if (paper_unit != conversion.paper) continue;
    const bool small_length = paper_unit == "mm" || paper_unit == "in";
    for (const Leaf& leaf : leaves) {
      // A length is a length, whether the document has it in mm or in m.
      const double factor = small_length && leaf.unit == "m" ? 1000.0 : 1.0;
      const bool same = leaf.unit == conversion.document || factor != 1.0;
      if (same && shows(figure, leaf.value * factor * conversion.factor)) return true;
    }
  }
  return false;
}

struct Figure {
  std::string number, unit;
};

// Every number that a unit follows; of "0.5 to 0.4 N" both.
inline std::vector<Figure> figures_in(const std::string& text) {
  std::string units;
  for (const Conversion& conversion : conversions()) {
    units += (units.empty() ? "" : "|") + std::regex_replace(std::string(conversion.paper), std::regex("/"), "\\/");
  }
  const std::string number = "(-?[0-9][0-9,]*\\.?[0-9]*)";
  const std::regex pattern(number + "(?: to " + number + ")? (" + units + ")(?![A-Za-z0-9/])");
  std::vector<Figure> figures;
  for (auto it = std::sregex_iterator(text.begin(), text.end(), pattern); it != std::sregex_iterator(); ++it) {
    figures.push_back({(*it)[1], (*it)[3]});
    if ((*it)[2].matched) figures.push_back({(*it)[2], (*it)[3]});
  }
  return figures;
}

}  // namespace laywright
