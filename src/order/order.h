// An order: lengths to deliver on spools, as its file says them (`*.order.toml`). Nothing is laid here.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "plan/lay_plan.h"

namespace laywright {

inline constexpr std::string_view order_format = "lay-order 1";
inline constexpr std::string_view order_ending = ".order.toml";
inline constexpr std::string_view an_order = "an order of lengths over spools";

// So many are delivered or wound at most: beyond, a file has a digit too many.
inline constexpr int most_pieces = 1000, most_spools = 1000;

// Pieces of one length.
struct OrderedPieces {
  double length_mm = 0.0;
  int count = 1;
  int line = 0;  // of the file
};

// Spools that are wound by one plan, of which spool, fiber, traverse and take-up hold; its length does not.
struct OrderedSpools {
  std::string plan;               // a path; from the folder of the order's file where it is relative
  std::optional<int> count;       // at hand; none: as many as it takes
  std::optional<double> most_mm;  // of delivered fiber on one, whatever else fits
  int line = 0;
};

struct Order {
  std::string file;
  std::string title;
  std::string number, customer, lot;
  std::vector<OrderedPieces> pieces;  // at least one
  std::vector<OrderedSpools> spools;  // at least one
  // On every spool, besides what is delivered.
  double leader_mm = 0.0, tail_mm = 0.0;  // before the first piece, and behind the last one
  double sample_mm = 0.0;                 // wound last, and cut off for testing
  int samples = 0;
  // On a spool at most. 0: pieces stay whole and are not joined.
  int splices = 0;

  [[nodiscard]] double samples_mm() const { return sample_mm * samples; }
  [[nodiscard]] double besides_mm() const { return leader_mm + tail_mm + samples_mm(); }
};

// All issues at once, in the order of the lines, each with file, line, key path, value, what is allowed and what to do.
[[nodiscard]] Result<Order> order_from_text(std::string_view text, const std::string& file_name);

// The same from a file. Errors also as read_file has them.
[[nodiscard]] Result<Order> load_order(const std::string& file);

// An issue of the order at that line.
[[nodiscard]] Issue order_issue(const Order& order, int line, std::string key, std::string value, std::string what);

}  // namespace laywright
