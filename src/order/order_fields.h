// Every key of an order's file, once. Inside the folder only.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "order/order.h"
#include "plan/fields.h"

namespace laywright {

struct OrderText {
  std::string_view key;
  std::string Order::*text;
  std::size_t longest;  // characters
};

// At the top: title, number, customer, lot.
[[nodiscard]] const std::vector<OrderText>& order_texts();

// Of a [[piece]], a [[spool]] and of [delivery].
[[nodiscard]] const std::vector<Field<OrderedPieces>>& piece_fields();
[[nodiscard]] const std::vector<Field<OrderedSpools>>& spool_fields();
[[nodiscard]] const std::vector<Field<Order>>& delivery_fields();

}  // namespace laywright
