#include "order/order_fields.h"

#include "plan/member_field.h"

namespace laywright {
namespace {

// As long as a plan's.
constexpr double longest_mm = 1e12;

FieldInfo length(std::string_view table, std::string_view key, std::string_view unit, bool from_zero,
                 bool required = false) {
  return {table, key, FieldKind::quantity, Dimension::length, unit, required, {0.0, longest_mm, !from_zero}, {}};
}

FieldInfo whole(std::string_view table, std::string_view key, double low, double high) {
  return {table, key, FieldKind::whole, Dimension::length, "", false, {low, high, false}, {}};
}

// A member's name cannot stand in parentheses.
// NOLINTBEGIN(bugprone-macro-parentheses)
#define MEMBER(path) \
  [](auto& owner) -> auto& { return owner.path; }
// NOLINTEND(bugprone-macro-parentheses)

}  // namespace

const std::vector<OrderText>& order_texts() {
  static const std::vector<OrderText> texts = {{"title", &Order::title, longest_title},
                                               {"number", &Order::number, longest_order_text},
                                               {"customer", &Order::customer, longest_order_text},
                                               {"lot", &Order::lot, longest_order_text}};
  return texts;
}

const std::vector<Field<OrderedPieces>>& piece_fields() {
  static const std::vector<Field<OrderedPieces>> fields = {
      field<OrderedPieces>(length("piece", "length", "m", false, true), MEMBER(length_mm)),
      field<OrderedPieces>(whole("piece", "count", 1, most_pieces), MEMBER(count)),
  };
  return fields;
}

const std::vector<Field<OrderedSpools>>& spool_fields() {
  static const std::vector<Field<OrderedSpools>> fields = {
      field<OrderedSpools>(whole("spool", "count", 1, most_spools), MEMBER(count)),
      field<OrderedSpools>(length("spool", "most", "m", false), MEMBER(most_mm)),
  };
  return fields;
}

const std::vector<Field<Order>>& delivery_fields() {
  constexpr double most_samples = 1000, most_splices = 1000;
  static const std::vector<Field<Order>> fields = {
      field<Order>(length("delivery", "leader", "m", true), MEMBER(leader_mm)),
      field<Order>(length("delivery", "tail", "m", true), MEMBER(tail_mm)),
      field<Order>(length("delivery", "sample", "m", true), MEMBER(sample_mm)),
      field<Order>(whole("delivery", "samples", 0, most_samples), MEMBER(samples)),
      field<Order>(whole("delivery", "splices", 0, most_splices), MEMBER(splices)),
  };
  return fields;
}

}  // namespace laywright
