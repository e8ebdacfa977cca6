// An order over spools in the window.
#include "bench_for_tests.h"

#include <algorithm>

#include "order/reel_plan.h"
#include "session/order_commands.h"

using namespace laywright;
using namespace laywright::testing;
using Catch::Matchers::Contains;

namespace {

const std::string head = "format = \"lay-order 1\"\nnumber = \"7\"\ntitle = \"Short\"\nplan = \"reel.lay.toml\"\n";

std::string pieces(const std::string& length, int count = 2) {
  return head + "[[piece]]\nlength = " + length + "\ncount = " + std::to_string(count) + "\n";
}

struct OrderBench {
  TemporaryFolder folder;
  Workbench bench;
  std::string file;

  explicit OrderBench(const std::string& text) : bench(options_in(folder)) {
    (void)folder.file("reel.lay.toml", reel);
    file = folder.file("a.order.toml", text);
    REQUIRE(bench.apply(cmd::open(file)));
  }
  [[nodiscard]] const OpenOrder& order() const { return bench.order(); }
  void wait() {
    REQUIRE(wait_until(bench, [&] { return !order().status().busy; }));
  }
  [[nodiscard]] bool written_into(const std::filesystem::path& out) {
    if (!bench.apply(cmd::write_order(out.string()))) return false;
    REQUIRE(wait_until(bench, [&] { return !order().is_writing(); }));
    return order().saving()->outcome->empty();
  }
};

}  // namespace

TEST_CASE("an order is opened like a plan, and laid quickly first, then to the figures of the command") {
  OrderBench shop(pieces("\"200 m\""));
  CHECK(shop.bench.question() == cmd::Question::order);
  CHECK(shop.bench.documents().empty());
  CHECK(shop.bench.seconds_to_next_poll());  // without a plan, too
  std::vector<bool> full;
  std::shared_ptr<const LaidOrder> last;
  REQUIRE(wait_until(shop.bench, [&] {
    if (shop.order().laid() != last) {
      last = shop.order().laid();
      full.push_back(last->full);
    }
    return !shop.order().status().busy;
  }));
  CHECK(full == std::vector<bool>{false, true});
  REQUIRE(shop.order().can_be_written());
  CHECK_FALSE(shop.bench.seconds_to_next_poll());

  // As the command does it.
  const Order order = load_order(shop.file).value();
  std::vector<SpoolKind> kinds = kinds_of(order, Catalogues({})).value();
  Progress progress;
  REQUIRE(find_room(order, kinds, {}, 1, progress).empty());
  Batch batch = batch_of(order, kinds).value();
  REQUIRE(wind_batch(batch, {}, 1, progress).empty());
  REQUIRE(last->batch.winds.size() == batch.winds.size());
  CHECK(last->batch.winds.front().outer_diameter_mm == batch.winds.front().outer_diameter_mm);
  CHECK(last->batch.winds.front().stations_per_turn == batch.winds.front().stations_per_turn);
}

TEST_CASE("what is wrong with an order is told with line and key, nothing is laid, and read again it is") {
  OrderBench shop(pieces("200"));
  REQUIRE(shop.order().issues().size() == 1);
  CHECK(shop.order().issues().front().line == 6);
  CHECK(shop.order().issues().front().key == "piece[0].length");
  CHECK_FALSE(shop.order().status().busy);
  CHECK_THAT(shop.bench.why_not(cmd::write_order("out")), Contains("mend what is told"));
  (void)shop.folder.file("a.order.toml", pieces("\"200 m\""));
  REQUIRE(shop.bench.apply(cmd::lay_order_again()));
  CHECK(shop.order().issues().empty());
  shop.wait();
  CHECK(shop.order().can_be_written());
}

TEST_CASE("what no spool takes is told, and such an order is not written") {
  OrderBench shop(pieces("\"5 km\""));
  shop.wait();
  REQUIRE(shop.order().laid());
  REQUIRE(shop.order().laid()->not_placed.size() == 1);
  CHECK_THAT(shop.order().laid()->not_placed.front().what, Contains("allow splices"));
  CHECK(shop.order().laid()->batch.kinds.front().room_mm > 300'000.0);  // how much it takes is told
  CHECK_FALSE(shop.bench.apply(cmd::write_order((shop.folder.path() / "out").string())));
  CHECK_FALSE(shop.bench.apply(cmd::open_spool_plan(0)));
}

TEST_CASE("without an order there is nothing to show but the way to choose one, and a laying is stopped") {
  OrderBench shop(pieces("\"300 m\"", 40));
  REQUIRE(shop.bench.apply(cmd::stop_laying_order()));
  CHECK(shop.order().status().stopped);
  CHECK_FALSE(shop.order().status().busy);
  CHECK_THAT(shop.bench.why_not(cmd::write_order("out")), Contains("read it again"));
  CHECK_THAT(shop.bench.why_not(cmd::stop_laying_order()), Contains("No order is being laid"));

  const TemporaryFolder folder;
  Workbench empty(options_in(folder));
  CHECK_THAT(empty.why_not(cmd::ask(cmd::Question::order)), Contains("No order is open"));
  CHECK_FALSE(empty.why_not(cmd::ask(cmd::Question::order_folder)).empty());
  CHECK_FALSE(empty.why_not(cmd::lay_order_again()).empty());
  REQUIRE(empty.apply(cmd::show_order()));
  CHECK(empty.question() == cmd::Question::order_to_open);
}

TEST_CASE(
    "everything is written, and then the plan of a spool is its file, as long as the order is laid as it was") {
  OrderBench shop(pieces("\"200 m\""));
  shop.wait();
  const std::filesystem::path out = shop.folder.path() / "out";
  REQUIRE(shop.bench.apply(cmd::open_spool_plan(1)));
  CHECK(document(shop.bench).path().empty());
  CHECK(document(shop.bench).title() == "Short, spool 2 of 2");
  CHECK(document(shop.bench).dirty());
  CHECK_FALSE(shop.bench.question());

  REQUIRE(shop.written_into(out));
  CHECK(shop.bench.question() == cmd::Question::order);
  std::set<std::string> names;
  for (const auto& file : std::filesystem::directory_iterator(out)) names.insert(file.path().filename().string());
  CHECK(names == std::set<std::string>{"batch.csv", "batch.pdf", "spool-1.lay.toml", "spool-1.pdf",
                                       "spool-2.lay.toml", "spool-2.pdf"});
  CHECK(contents(out / "spool-2.pdf").starts_with("%PDF-"));
  REQUIRE(shop.bench.apply(cmd::open_spool_plan(1)));
  CHECK(document(shop.bench).path() == std::filesystem::weakly_canonical(out / "spool-2.lay.toml"));
  CHECK_FALSE(document(shop.bench).dirty());
  CHECK(document(shop.bench).state().draft.order.spool == "2 of 2");

  REQUIRE(shop.bench.apply(cmd::lay_order_again()));
  shop.wait();
  CHECK_FALSE(shop.order().written_plan(1));
}

TEST_CASE("a plan that an order was made from is never lost, and then nothing is written") {
  OrderBench shop(head + "[[piece]]\nlength = \"20 m\"\n[[spool]]\nplan = \"spool-1.lay.toml\"\n");
  (void)shop.folder.file("spool-1.lay.toml", reel);
  (void)shop.folder.file("a.order.toml",
                         "format = \"lay-order 1\"\nplan = \"spool-1.lay.toml\"\n[[piece]]\nlength = \"20 m\"\n");
  REQUIRE(shop.bench.apply(cmd::lay_order_again()));
  shop.wait();
  CHECK_FALSE(shop.written_into(shop.folder.path()));
  CHECK_THAT(shop.order().saving()->outcome->front().what, Contains("would be lost"));
  CHECK(contents(shop.folder.path() / "spool-1.lay.toml") == reel);
  CHECK_FALSE(std::filesystem::exists(shop.folder.path() / "batch.csv"));
  CHECK_FALSE(shop.order().written_plan(0));
}

TEST_CASE("whoever has left an order is told when it is laid, or why not") {
  for (const bool fits : {true, false}) {
    OrderBench shop(pieces(fits ? "\"200 m\"" : "\"5 km\""));
    REQUIRE(shop.bench.apply(cmd::answered()));
    shop.wait();
    REQUIRE(shop.bench.notices().size() == 1);
    CHECK_THAT(shop.bench.notices().front().text,
               Contains("a.order.toml") && Contains(fits ? "shows what comes of it" : "shows why"));
    REQUIRE(shop.bench.apply(cmd::show_order()));
    CHECK(shop.bench.question() == cmd::Question::order);
  }
}
