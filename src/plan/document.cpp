#include "plan/document.h"

#include <algorithm>
#include <utility>

// No exceptions: a text that is not TOML is an ordinary result, and the web build has none.
#define TOML_EXCEPTIONS 0
#define TOML_HEADER_ONLY 1
// Version 3.3 promises the compiler what a text can break: that a letter like an e with an accent never stands outside
// of quotes, and nothing but a key follows a bracket. The parser handles both, once the promises are taken back.
#include <toml++/impl/preprocessor.h>
#undef TOML_ASSERT_ASSUME
#define TOML_ASSERT_ASSUME(expr) static_cast<void>(0)
#undef TOML_UNREACHABLE
#define TOML_UNREACHABLE return false
#include <toml++/impl/forward_declarations.h>
#include <toml++/impl/unicode.h>
#undef TOML_UNREACHABLE
#define TOML_UNREACHABLE __builtin_unreachable()
#include <toml++/toml.h>

#include "plan/document_guard.h"
#include "plan/syntax_help.h"

namespace laywright {
namespace {

constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";

// From the parser's lines and columns (in characters) to bytes.
class Places {
 public:
  explicit Places(std::string_view text) : text_(text) {
    starts_.push_back(text.substr(0, 3) == byte_order_mark ? 3 : 0);
    for (std::size_t i = 0; i < text.size(); ++i) {
      if (text[i] == '\n') starts_.push_back(i + 1);
    }
  }

  [[nodiscard]] std::size_t byte(const toml::source_position& place) const {
    if (place.line == 0 || place.line > starts_.size()) return 0;
    std::size_t at = starts_[place.line - 1];
    for (std::uint32_t column = 1; column < place.column && at < text_.size(); ++column) {
      ++at;
      while (at < text_.size() && (static_cast<unsigned char>(text_[at]) & 0xc0U) == 0x80U) ++at;
    }
    return at;
  }

  [[nodiscard]] std::string_view text() const { return text_; }
  [[nodiscard]] std::string_view between(std::size_t begin, std::size_t end) const {
    return text_.substr(begin, end - begin);
  }

  [[nodiscard]] std::size_t skip_blanks(std::size_t at) const {
    return std::min(text_.find_first_not_of(" \t\"'", at), text_.size());
  }

 private:
  std::string_view text_;
  std::vector<std::size_t> starts_;
};

Entry::Kind kind_of(const toml::node& node) {
  switch (node.type()) {
    case toml::node_type::table: return Entry::Kind::table;
    case toml::node_type::array: return Entry::Kind::list;
    case toml::node_type::string: return Entry::Kind::text;
    case toml::node_type::integer: return Entry::Kind::whole;
    case toml::node_type::floating_point: return Entry::Kind::number;
    case toml::node_type::boolean: return Entry::Kind::truth;
    default: return Entry::Kind::other;
  }
}

Entry entry_of(const toml::node& node, const toml::key* key, const Places& places);

void add_children(Entry& entry, const toml::node& node, const Places& places) {
  if (const toml::table* table = node.as_table()) {
    for (auto&& [key, value] : *table) entry.children.push_back(entry_of(value, &key, places));
  }
  if (const toml::array* list = node.as_array()) {
    for (auto&& value : *list) entry.children.push_back(entry_of(value, nullptr, places));
  }
  std::stable_sort(entry.children.begin(), entry.children.end(),
                   [](const Entry& a, const Entry& b) { return a.key_begin < b.key_begin; });
}

// [traverse.reversal] makes a table "traverse" too, which stands at that header but has none of its own.
bool owns_header(const Entry& entry, const toml::key& key, const Places& places) {
  const std::size_t after = places.skip_blanks(places.byte(key.source().end));
  return places.text().substr(entry.begin, 1) == "[" && places.text().substr(after, 1) == "]";
}

Entry entry_of(const toml::node& node, const toml::key* key, const Places& places) {
  Entry entry;
  entry.kind = kind_of(node);
  entry.begin = places.byte(node.source().begin);
  entry.end = places.byte(node.source().end);
  entry.key_begin = key != nullptr ? places.byte(key->source().begin) : entry.begin;
  entry.line = static_cast<int>(key != nullptr ? key->source().begin.line : node.source().begin.line);
  if (key != nullptr) entry.key = key->str();
  if (const toml::table* table = node.as_table()) {
    entry.is_inline = table->is_inline();
    entry.has_header = key == nullptr || owns_header(entry, *key, places);
  } else if (node.is_array()) {
    // "key = [...]", or [[key]] where the list begins before the key.
    entry.is_inline = key == nullptr || entry.begin > entry.key_begin;
  } else {
    entry.text = node.is_string() ? node.as_string()->get() : std::string(places.between(entry.begin, entry.end));
    if (node.is_floating_point()) entry.number = node.as_floating_point()->get();
    if (node.is_integer()) entry.number = static_cast<double>(node.as_integer()->get());
  }
  add_children(entry, node, places);
  return entry;
}

}  // namespace

const Entry* Entry::child(std::string_view name) const {
  const auto found = std::find_if(children.begin(), children.end(), [&](const Entry& e) { return e.key == name; });
  return found == children.end() ? nullptr : &*found;
}

Result<Entry> read_document(std::string_view text, const std::string& file, std::string_view what) {
  if (std::optional<Issue> refused = refuse_document(text, what)) {
    refused->file = file;
    return *refused;
  }
  const toml::parse_result parsed = toml::parse(text);
  if (!parsed) {
    const toml::parse_error& error = parsed.error();
    return explain_syntax(text, static_cast<int>(error.source().begin.line), error.description(), file, what);
  }
  return entry_of(parsed.table(), nullptr, Places(text));
}

}  // namespace laywright
