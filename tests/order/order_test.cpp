// Reading an order.
#include "order/order.h"

#include <catch2/catch.hpp>

using namespace laywright;

namespace {

const std::string sound = R"(format = "lay-order 1"
title = "Three drums"
number = "4711"
customer = "A and B"
lot = "L-9"
plan = "reel.lay.toml"

[[piece]]
length = "20 km"
count = 2
[[piece]]
length = "500 m"

[[spool]]
count = 2
[[spool]]
plan = "small/reel.lay.toml"
most = "1 km"

[delivery]
leader = "5 m"
tail = "300 cm"
sample = "2 m"
samples = 3
splices = 1
)";

std::string with(const std::string& from, const std::string& to, std::string text = sound) {
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

Issue only_issue(const std::string& text) {
  const Result<Order> order = order_from_text(text, "a.order.toml");
  for (const Issue& issue : order.issues()) UNSCOPED_INFO(to_text(issue));
  REQUIRE_FALSE(order.ok());
  REQUIRE(order.issues().size() == 1);
  CHECK(order.issues().front().file == "a.order.toml");
  return order.issues().front();
}

}  // namespace

TEST_CASE("an order says what, on what, and what comes besides") {
  const Result<Order> read = order_from_text(sound, "a.order.toml");
  REQUIRE(read.ok());
  const Order& order = read.value();
  CHECK(order.title == "Three drums");
  CHECK(order.number == "4711");
  CHECK(order.customer == "A and B");
  CHECK(order.lot == "L-9");
  REQUIRE(order.pieces.size() == 2);
  CHECK(order.pieces[0].length_mm == 20e6);
  CHECK(order.pieces[0].count == 2);
  CHECK(order.pieces[1].length_mm == 500e3);
  CHECK(order.pieces[1].count == 1);
  REQUIRE(order.spools.size() == 2);
  CHECK(order.spools[0].plan == "reel.lay.toml");
  CHECK(order.spools[0].count == 2);
  CHECK_FALSE(order.spools[0].most_mm);
  CHECK(order.spools[1].plan == "small/reel.lay.toml");
  CHECK_FALSE(order.spools[1].count);
  CHECK(order.spools[1].most_mm == 1e6);
  CHECK(order.leader_mm == 5e3);
  CHECK(order.tail_mm == 3e3);
  CHECK(order.samples_mm() == 6e3);
  CHECK(order.besides_mm() == 14e3);
  CHECK(order.splices == 1);
}

TEST_CASE("an order may be short: as many spools of the plan as it takes, and nothing besides") {
  const Result<Order> order = order_from_text(
      "format = \"lay-order 1\"\nplan = \"reel.lay.toml\"\n[[piece]]\nlength = \"1 km\"\n", "a.order.toml");
  REQUIRE(order.ok());
  REQUIRE(order.value().spools.size() == 1);
  CHECK_FALSE(order.value().spools[0].count);
  CHECK(order.value().spools[0].line == 2);
  CHECK(order.value().besides_mm() == 0.0);
  CHECK(order.value().splices == 0);
}

TEST_CASE("what is wrong in an order is told with its line, key, value and what would do") {
  struct Wrong {
    const char *from, *to, *key, *what;
    int line;
  };
  for (const Wrong& wrong :
       {Wrong{"lay-order 1", "lay-plan 1", "format", "does not say that this is an order", 1},
        Wrong{"lay-order 1", "lay-order 2", "format", "perhaps of a newer version", 1},
        Wrong{"number = \"4711\"", "number = 4711", "number", "must be text in quotes", 3},
        Wrong{"customer =", "custmer =", "custmer", "did you mean customer?", 4},
        // A plan's length is written in m, as those of delivery are.
        Wrong{"\"20 km\"", "200", "piece[0].length", "like \"200 m\"", 9},
        Wrong{"most = \"1 km\"", "most = 200", "spool[1].most", "like \"200 m\"", 18},
        Wrong{"\"20 km\"", "\"20 kg\"", "piece[0].length", "is a mass", 9},
        Wrong{"\"20 km\"", "\"0 km\"", "piece[0].length", "is out of range", 9},
        Wrong{"length = \"500 m\"", "lenght = \"500 m\"", "piece[1].lenght", "did you mean length?", 12},
        Wrong{"count = 2\n[[piece]]", "count = 2.5\n[[piece]]", "piece[0].count", "must be a whole number", 10},
        Wrong{"count = 2\n[[piece]]", "count = 999\n[[piece]]", "", "", 0},
        Wrong{"most = \"1 km\"", "most = \"-1 km\"", "spool[1].most", "is out of range", 18},
        Wrong{"[delivery]", "[deliveries]", "deliveries", "did you mean delivery?", 20},
        Wrong{"splices = 1", "splices = -1", "delivery.splices", "is out of range", 25},
        Wrong{"splices = 1", "splices = true", "delivery.splices", "plain number", 25},
        Wrong{"samples = 3\n", "", "delivery.samples", "how many samples", 23},
        Wrong{"sample = \"2 m\"\n", "", "delivery.sample", "how long each sample is", 23},
        Wrong{"A and B", "A very long name of a customer that no sheet has room for", "customer", "is too long, 57",
              4}}) {
    const std::string text = with(wrong.from, wrong.to);
    CAPTURE(wrong.from, wrong.to);
    if (wrong.line == 0) {
      CHECK(order_from_text(text, "a.order.toml").ok());
      continue;
    }
    const Issue issue = only_issue(text);
    CHECK(issue.key == wrong.key);
    CHECK(issue.line == wrong.line);
    CHECK_THAT(issue.what, Catch::Matchers::Contains(wrong.what));
  }
  CHECK(only_issue(with("\"20 km\"", "\"0 km\"")).allowed == "above 0 km, up to 1000000 km");
}

TEST_CASE("what an order lacks is told") {
  CHECK(only_issue("title = \"x\"\n").key == "format");
  CHECK(only_issue("format = \"lay-order 1\"\nplan = \"a.lay.toml\"\n").key == "piece");
  CHECK(only_issue("format = \"lay-order 1\"\n[[piece]]\nlength = \"1 km\"\n").key == "plan");
  CHECK(only_issue("format = \"lay-order 1\"\nplan = \"a\"\n[[piece]]\ncount = 2\n").key == "piece[0].length");
  CHECK(only_issue("format = \"lay-order 1\"\nplan = \"a\"\npiece = 5\n").what.find("must be a list of tables") ==
        0);
  CHECK(only_issue(with("count = 2\n[[piece]]\nlength = \"500 m\"",
                        "count = 600\n[[piece]]\nlength = \"1 m\"\ncount = 600"))
            .allowed == "up to 1000 pieces");
  CHECK_FALSE(order_from_text("", "a").ok());
  CHECK_FALSE(order_from_text("= =", "a").ok());
  CHECK_FALSE(load_order("/nowhere/a.order.toml").ok());
}

TEST_CASE("all issues of an order come at once, in the order of their lines") {
  const Result<Order> order = order_from_text(
      with("splices = 1", "splices = -1", with("\"4711\"", "4711", with("500 m", "500"))), "a.order.toml");
  REQUIRE(order.issues().size() == 3);
  CHECK(order.issues()[0].key == "number");
  CHECK(order.issues()[1].key == "piece[1].length");
  CHECK(order.issues()[2].key == "delivery.splices");
}
