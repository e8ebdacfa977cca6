#include "order/order.h"

#include <algorithm>
#include <set>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "base/read_file.h"
#include "base/readable.h"
#include "base/text_distance.h"
#include "order/order_fields.h"
#include "plan/document.h"
#include "plan/entry_issues.h"

namespace laywright {
namespace {

class OrderReader {
 public:
  OrderReader(Order& order, Issues& issues) : order_(order), issues_(issues), tell_(order.file, issues) {}

  void read(const Entry& document) {
    if (!tell_.has_format(document, {order_format, "order", an_order})) return;
    for (const Entry& entry : document.children) read_top(entry);
    finish_spools(document);
    finish_pieces();
    finish_samples(document);
  }

 private:
  void read_top(const Entry& entry) {
    if (entry.key == "format") return;
    for (const OrderText& text : order_texts()) {
      if (entry.key == text.key) return read_text(entry, entry.key, order_.*text.text, text.longest);
    }
    if (entry.key == "plan") return read_text(entry, "plan", plan_, longest_path);
    if (entry.key == "delivery") return read_delivery(entry);
    if (entry.key == "piece")
      return read_list(entry, [this](const Entry& item, const std::string& path) {
        OrderedPieces& piece = order_.pieces.emplace_back();
        piece.line = item.line;
        for (const Entry& key : item.children) read_field(piece_fields(), key, path, piece);
        if (item.child("length") == nullptr && meant_.count(path + ".length") == 0)
          tell_.add(item.line, path + ".length", "", "is missing; it says how long the piece is, like \"20 km\"");
      });
    if (entry.key == "spool")
      return read_list(entry, [this](const Entry& item, const std::string& path) {
        OrderedSpools& spools = order_.spools.emplace_back();
        spools.line = item.line;
        for (const Entry& key : item.children) {
          if (key.key == "plan") {
            read_text(key, path + ".plan", spools.plan, longest_path);
            spools.line = key.line;
          } else {
            read_field(spool_fields(), key, path, spools, "plan");
          }
        }
      });
    unknown(entry, entry.key,
            {"format", "title", "number", "customer", "lot", "plan", "piece", "spool", "delivery"});
  }

  void read_text(const Entry& entry, const std::string& path, std::string& text, std::size_t longest) {
    if (entry.kind != Entry::Kind::text) return tell_.add(entry, path, "must be text in quotes");
    text = entry.text;
    const std::size_t length = character_count(text);
    if (length > longest)
      tell_.add(entry, path, fmt::format("is too long, {} characters", length),
                fmt::format("up to {} characters", longest));
  }

  template <class ReadItem>
  void read_list(const Entry& list, ReadItem read_item) {
    if (!tell_.is_list_of_tables(list, list.key)) return;
    for (std::size_t i = 0; i < list.children.size(); ++i)
      read_item(list.children[i], fmt::format("{}[{}]", list.key, i));
  }

  void read_delivery(const Entry& table) {
    if (!tell_.is_table(table, "delivery")) return;
    for (const Entry& key : table.children) read_field(delivery_fields(), key, "delivery", order_);
  }

  // `also` is a key of the table that is no field.
  template <class Owner>
  void read_field(const std::vector<Field<Owner>>& fields, const Entry& entry, const std::string& table,
                  Owner& owner, const char* also = nullptr) {
    const std::string path = fmt::format("{}.{}", table, entry.key);
    const auto field =
        std::find_if(fields.begin(), fields.end(), [&](const auto& each) { return each.key == entry.key; });
    if (field == fields.end()) {
      std::vector<std::string> known;
      if (also != nullptr) known.emplace_back(also);
      for (const auto& each : fields) known.emplace_back(each.key);
      return unknown(entry, path, known);
    }
    if (const std::optional<double> value = tell_.number(*field, entry, path)) field->set(owner, *value);
  }

  void unknown(const Entry& entry, const std::string& path, const std::vector<std::string>& known) {
    const std::string nearest = nearest_word(entry.key, known);
    if (!nearest.empty()) meant_.insert(path.substr(0, path.size() - entry.key.size()) + nearest);
    tell_.add(entry, path,
              fmt::format("is not a key of an order; {}",
                          nearest.empty() ? "remove it" : fmt::format("did you mean {}?", nearest)),
              fmt::format("{}", fmt::join(known, ", ")));
  }

  // Each set of spools has a plan, its own or the order's; without any, there are as many as it takes of that plan.
  void finish_spools(const Entry& document) {
    const Entry* plan = document.child("plan");
    if (order_.spools.empty() && !told_of("spool"))
      order_.spools.push_back({plan_, std::nullopt, std::nullopt, plan != nullptr ? plan->line : 0});
    for (OrderedSpools& spools : order_.spools) {
      if (!spools.plan.empty()) continue;
      if (!plan_.empty()) {
        spools.plan = plan_;
      } else if (meant_.count("plan") == 0 && (plan == nullptr || plan->kind == Entry::Kind::text)) {
        return tell_.add(
            spools.line, "plan", "",
            "is missing; it names the lay plan of the spools, from the order's folder, like \"reel.lay.toml\"");
      }
    }
  }

  void finish_pieces() {
    if (order_.pieces.empty())
      return told_of("piece")
                 ? void()
                 : tell_.add(0, "piece", "",
                             "is missing; for each length to deliver add a line [[piece]], and length below");
    long pieces = 0;
    for (const OrderedPieces& each : order_.pieces) pieces += each.count;
    if (pieces > most_pieces)
      tell_.add(order_.pieces.front().line, "piece", "",
                fmt::format("there are {} pieces; make several orders of it", pieces),
                fmt::format("up to {} pieces", most_pieces));
  }

  // One without the other is a slip.
  void finish_samples(const Entry& document) {
    const Entry* table = document.child("delivery");
    if (table == nullptr) return;
    if (order_.samples > 0 && order_.sample_mm == 0.0 && table->child("sample") == nullptr)
      tell_.add(table->child("samples")->line, "delivery.sample", "", "is missing; it says how long each sample is");
    if (order_.sample_mm > 0.0 && order_.samples == 0 && table->child("samples") == nullptr)
      tell_.add(table->child("sample")->line, "delivery.samples", "",
                "is missing; it says how many samples are cut off each spool");
  }

  // Whether that list is there, but cannot be read.
  [[nodiscard]] bool told_of(const std::string& key) const {
    return meant_.count(key) > 0 ||
           std::any_of(issues_.begin(), issues_.end(), [&](const Issue& issue) { return issue.key == key; });
  }

  static constexpr std::size_t longest_path = 1000;

  Order& order_;
  const Issues& issues_;
  EntryIssues tell_;
  std::set<std::string> meant_;  // keys that are misspelt, so that they are not missed, too
  std::string plan_;             // of spools that name none
};

}  // namespace

Issue order_issue(const Order& order, int line, std::string key, std::string value, std::string what) {
  return issue_at(order.file, line, key, std::move(value), std::move(what));
}

Result<Order> order_from_text(std::string_view text, const std::string& file_name) {
  const Result<Entry> document = read_document(text, file_name, an_order);
  if (!document.ok()) return document.issues();
  Order order;
  order.file = file_name;
  Issues issues;
  OrderReader(order, issues).read(document.value());
  if (issues.empty()) return order;
  std::stable_sort(issues.begin(), issues.end(), [](const Issue& a, const Issue& b) { return a.line < b.line; });
  constexpr std::size_t most_told = 100;
  if (issues.size() > most_told) issues.resize(most_told);
  return issues;
}

Result<Order> load_order(const std::string& file) {
  const Result<std::string> text = read_file(file, an_order, largest_plan_bytes);
  if (!text.ok()) return text.issues();
  return order_from_text(text.value(), file);
}

}  // namespace laywright
