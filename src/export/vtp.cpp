#include "export/vtp.h"

#include <bit>
#include <functional>
#include <limits>
#include <optional>
#include <vector>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "export/file_size.h"
#include "measure/fiber_line.h"
#include "scene/colouring.h"
#include "takeup/formulas.h"
#include "takeup/turn_line.h"

namespace laywright {

namespace {

static_assert(std::endian::native == std::endian::little, "the file says that it is little-endian");

using Length = std::uint64_t;  // before each array: its bytes

// Collects numbers and passes them on in blocks.
class Block {
 public:
  explicit Block(std::ostream& out) : out_(out) { bytes_.reserve(block_bytes + 64); }
  ~Block() { flush(); }
  Block(const Block&) = delete;
  Block& operator=(const Block&) = delete;

  template <class Number>
  void put(Number number) {
    const char* const first = reinterpret_cast<const char*>(&number);
    bytes_.insert(bytes_.end(), first, first + sizeof number);
    if (bytes_.size() >= block_bytes) flush();
  }

 private:
  static constexpr std::size_t block_bytes = 1U << 18U;
  void flush() {
    out_.write(bytes_.data(), static_cast<std::streamsize>(bytes_.size()));
    bytes_.clear();
  }

  std::ostream& out_;
  std::vector<char> bytes_;
};

// The points of a line, in their order.
template <class Visit>
void for_each_point(const ThinnedLine& line, const Visit& visit) {
  for (std::size_t i = 0; i < line.layers.size(); ++i) {
    const ThinnedLayer& layer = line.layers[i];
    // The last of all but the newest layer is the first of the next.
    const std::size_t count = layer.nodes.size() - (i + 1 < line.layers.size() ? 1 : 0);
    for (std::size_t k = 0; k < count; ++k) visit(layer.nodes[k], layer.layer);
  }
}

std::size_t points_of(const ThinnedLine& line) { return line.nodes() - (line.layers.size() - 1); }

// An array of a file: what its element says of it, its size, and how its numbers are put.
struct Array {
  std::string type, name;
  int components = 1;
  Length bytes = 0;
  std::function<void(Block&)> put;
};

// All arrays, in the order in which they are appended.
class Arrays {
 public:
  Arrays(const SceneSource& source, const ThinnedLine& line)
      : source_(source), build_(source.build()), line_(line), points_(points_of(line)), places_(build_) {
    if (source.plan().takeup() && source.plan().wind().tension_N) turns_.emplace(build_);
  }

  [[nodiscard]] std::size_t points() const { return points_; }

  [[nodiscard]] Array places() const {
    return {"Float32", "Points", 3, 3 * sizeof(float) * points_, [this](Block& block) {
              for_each_point(line_, [&](std::size_t node, std::size_t) {
                const Vec3 place = places_.at(node);
                for (const double value : {place.x, place.y, place.z}) block.put(static_cast<float>(value));
              });
            }};
  }

  [[nodiscard]] std::vector<Array> of_points() const {
    std::vector<Array> arrays{
        array<double>("turn", [this](std::size_t node,
                                     std::size_t) { return static_cast<double>(node) / build_.stations_per_turn; }),
        lengths(),
        array<std::int32_t>("layer",
                            [](std::size_t, std::size_t layer) { return static_cast<std::int32_t>(layer); }),
        array<std::int8_t>("direction",
                           [this](std::size_t, std::size_t layer) {
                             return static_cast<std::int8_t>(build_.strokes[layer - 1].direction);
                           }),
        array<std::uint8_t>(
            "support",
            [this](std::size_t node, std::size_t) { return static_cast<std::uint8_t>(build_.nodes.support(node)); }),
        array<float>("rise_d", [this](std::size_t node, std::size_t) { return number(rise_d(source_, node)); }),
        array<float>("gap_d", [this](std::size_t node, std::size_t) { return number(gap_d(source_, node)); })};
    if (turns_)
      arrays.push_back(array<float>(
          "tension_N", [this](std::size_t node, std::size_t) { return static_cast<float>(tension(node)); }));
    return arrays;
  }

  [[nodiscard]] std::vector<Array> of_lines() const {
    const auto integer = static_cast<Length>(sizeof(std::int64_t));
    return {{"Int64", "connectivity", 1, integer * line_.nodes(),
             [this](Block& block) {
               std::int64_t point = 0;
               for (const ThinnedLayer& layer : line_.layers) {
                 for (std::size_t k = 0; k < layer.nodes.size(); ++k) block.put(point++);
                 --point;
               }
             }},
            {"Int64", "offsets", 1, integer * line_.layers.size(), [this](Block& block) {
               std::int64_t end = 0;
               for (const ThinnedLayer& layer : line_.layers)
                 block.put(end += static_cast<std::int64_t>(layer.nodes.size()));
             }}};
  }

 private:
  template <class Number>
  [[nodiscard]] static const char* type_name() {
    if constexpr (std::is_same_v<Number, double>) return "Float64";
    if constexpr (std::is_same_v<Number, float>) return "Float32";
    if constexpr (std::is_same_v<Number, std::int32_t>) return "Int32";
    if constexpr (std::is_same_v<Number, std::int8_t>) return "Int8";
    if constexpr (std::is_same_v<Number, std::uint8_t>) return "UInt8";
  }

  template <class Number, class Value>
  [[nodiscard]] Array array(const char* name, Value value) const {
    return {type_name<Number>(), name, 1, sizeof(Number) * points_, [this, value](Block& block) {
              for_each_point(line_, [&](std::size_t node, std::size_t layer) {
                const Number is = value(node, layer);
                block.put(is);
              });
            }};
  }

  // Summed from node to node, those between the points included.
  [[nodiscard]] Array lengths() const {
    return {"Float64", "length_m", 1, sizeof(double) * points_, [this](Block& block) {
              const double angle = 2.0 * std::numbers::pi / build_.stations_per_turn;
              const NodeStore& nodes = build_.nodes;
              std::size_t at = 0;
              double length_mm = 0.0;
              for_each_point(line_, [&](std::size_t node, std::size_t) {
                for (; at < node; ++at)
                  length_mm += piece_length(nodes.x(at), nodes.r(at), nodes.x(at + 1), nodes.r(at + 1), angle);
                block.put(length_mm / 1e3);
              });
            }};
  }

  [[nodiscard]] static float number(const std::optional<double>& value) {
    return value ? static_cast<float>(*value) : std::numeric_limits<float>::quiet_NaN();
  }

  [[nodiscard]] double tension(std::size_t node) const {
    const std::size_t turn = std::min(node / source_.stations(), turns_->turns() - 1);
    return tension_at(*source_.plan().takeup(), *source_.plan().wind().tension_N, turns_->radius_mm(0),
                      turns_->radius_mm(turn));
  }

  const SceneSource& source_;
  const Build& build_;
  const ThinnedLine& line_;
  std::size_t points_;
  NodePlaces places_;
  std::optional<TurnLine> turns_;
};

// The elements of one kind, and where each array's bytes begin.
void add_elements(std::string& text, const std::vector<Array>& arrays, Length& offset) {
  for (const Array& array : arrays) {
    text += fmt::format(
        "        <DataArray type=\"{}\" Name=\"{}\" NumberOfComponents=\"{}\" format=\"appended\" offset=\"{}\"/>\n",
        array.type, array.name, array.components, offset);
    offset += sizeof(Length) + array.bytes;
  }
}

// Source of the layout: Kitware, VTK file formats, XML formats, PolyData, appended raw data.
std::string head_of(const Arrays& arrays, std::size_t lines) {
  Length offset = 0;
  std::string text = fmt::format(
      "<?xml version=\"1.0\"?>\n"
      "<VTKFile type=\"PolyData\" version=\"1.0\" byte_order=\"LittleEndian\" header_type=\"UInt64\">\n"
      "  <PolyData>\n"
      "    <Piece NumberOfPoints=\"{}\" NumberOfVerts=\"0\" NumberOfLines=\"{}\" NumberOfStrips=\"0\" "
      "NumberOfPolys=\"0\">\n"
      "      <Points>\n",
      arrays.points(), lines);
  add_elements(text, {arrays.places()}, offset);
  text += "      </Points>\n      <PointData Scalars=\"layer\">\n";
  add_elements(text, arrays.of_points(), offset);
  text += "      </PointData>\n      <Lines>\n";
  add_elements(text, arrays.of_lines(), offset);
  text += "      </Lines>\n    </Piece>\n  </PolyData>\n  <AppendedData encoding=\"raw\">\n_";
  return text;
}

std::vector<Array> in_order(const Arrays& arrays) {
  std::vector<Array> all{arrays.places()};
  for (Array& array : arrays.of_points()) all.push_back(std::move(array));
  for (Array& array : arrays.of_lines()) all.push_back(std::move(array));
  return all;
}

}  // namespace

Result<VtpLine> plan_vtp(const SceneSource& source, const VtpSettings& settings) {
  VtpLine planned;
  planned.line = thin_line(source.build(), NodePlaces(source.build()), settings.layers, settings.tolerance_mm);
  const Arrays arrays(source, planned.line);
  planned.points = arrays.points();
  planned.bytes = static_cast<double>(head_of(arrays, planned.line.layers.size()).size());
  for (const Array& array : in_order(arrays)) planned.bytes += static_cast<double>(sizeof(Length) + array.bytes);
  if (planned.bytes <= settings.most_bytes) return planned;
  Issue issue;
  issue.what = fmt::format(
      "the file would have {}, more than the {} that are allowed; raise --tolerance (now {} mm), choose fewer "
      "--layers, lower --fidelity, or allow more with --at-most",
      size_of_file(planned.bytes), size_of_file(settings.most_bytes), short_figure(settings.tolerance_mm, 4));
  return issue;
}

bool write_vtp(std::ostream& out, const SceneSource& source, const VtpLine& line, Progress& progress) {
  const Arrays arrays(source, line.line);
  out << head_of(arrays, line.line.layers.size());
  const std::vector<Array> all = in_order(arrays);
  for (std::size_t i = 0; i < all.size() && out; ++i) {
    progress.report(static_cast<double>(i) / static_cast<double>(all.size()));
    if (progress.cancelled()) return false;
    Block block(out);
    block.put(all[i].bytes);
    all[i].put(block);
  }
  out << "\n  </AppendedData>\n</VTKFile>\n";
  return true;
}

}  // namespace laywright
