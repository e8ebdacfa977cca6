// Orders over small reels, in a folder of their own.
#pragma once

#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "order/batch.h"
#include "order/reel_plan.h"
#include "temporary_folder.h"

namespace laywright::testing {

class NoEntries : public EntrySource {
 public:
  [[nodiscard]] Result<NamedEntry> find(EntryKind, const std::string&) const override {
    Issue issue;
    issue.what = "none";
    return issue;
  }
};

struct ReelShop {
  TemporaryFolder folder;
  NoEntries entries;
  LaySettings settings{1, 0.25};
  Progress progress;

  ReelShop() { (void)folder.file("reel.lay.toml", reel); }

  Order order(const std::string& rest) const {
    const std::string text = "format = \"lay-order 1\"\nnumber = \"7\"\nplan = \"reel.lay.toml\"\n" + rest;
    const Result<Order> read = order_from_text(text, (folder.path() / "a.order.toml").string());
    for (const Issue& issue : read.issues()) UNSCOPED_INFO(to_text(issue));
    REQUIRE(read.ok());
    return read.value();
  }
  std::vector<SpoolKind> kinds(const Order& order) {
    const Result<std::vector<SpoolKind>> read = kinds_of(order, entries);
    REQUIRE(read.ok());
    std::vector<SpoolKind> found = read.value();
    REQUIRE(find_room(order, found, settings, 2, progress).empty());
    return found;
  }
  Batch wound(const std::string& rest) {
    const Order order_read = order(rest);
    Result<Batch> batch = batch_of(order_read, kinds(order_read));
    for (const Issue& issue : batch.issues()) UNSCOPED_INFO(to_text(issue));
    REQUIRE(batch.ok());
    Batch result = std::move(batch).value();
    REQUIRE(wind_batch(result, settings, 2, progress).empty());
    return result;
  }
};

}  // namespace laywright::testing
