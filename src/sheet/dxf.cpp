// Group codes and values, one pair of lines each.
#include "sheet/dxf.h"

#include <fmt/format.h>

#include <cctype>
#include <iterator>

namespace nook {
namespace {

class Writer {
 public:
  void pair(int code, std::string_view value) {
    fmt::format_to(std::back_inserter(out_), "{:3}\n{}\n", code, value);
  }
  void pair(int code, int value) { pair(code, fmt::format("{:6}", value)); }
  void pair(int code, double value) { pair(code, fmt::format("{:.9f}", value)); }
  void point(int first, Vec2 p) {
    pair(first, p.x);
    pair(first + 10, p.y);
    pair(first + 20, 0.0);
  }
  void start(std::string_view kind, const std::string& layer) {
    pair(0, kind);
    pair(8, layer);
  }
  std::string text() && { return std::move(out_); }

 private:
  std::string out_;
};

// R12 names hold capitals, digits, $ - _ only.
std::string layer_name(const std::string& name) {
  std::string out;
  for (unsigned char c : name)
    out += std::isalnum(c) && c < 128 ? static_cast<char>(std::toupper(c)) : '_';
  return out;
}

const char* line_type(LineKind line) {
  return line == LineKind::dashed     ? "DASHED"
         : line == LineKind::dash_dot ? "DASHDOT"
         : line == LineKind::dotted   ? "DOT"
                                      : "CONTINUOUS";
}

// ASCII only: other characters as \U+XXXX; those beyond the basic plane as a question mark.
std::string ascii(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const unsigned char c = text[i];
    if (c < 0x20)
      out += ' ';
    else if (c < 0x80)
      out += text[i];
    else if (c >= 0xC0 && c < 0xE0 && i + 1 < text.size())
      out += fmt::format("\\U+{:04X}", (c & 0x1F) << 6 | (text[i + 1] & 0x3F)), i += 1;
    else if (c >= 0xE0 && c < 0xF0 && i + 2 < text.size())
      out += fmt::format("\\U+{:04X}",
                         (c & 0x0F) << 12 | (text[i + 1] & 0x3F) << 6 | (text[i + 2] & 0x3F)),
          i += 2;
    else
      out += '?', i += c >= 0xF0 ? 3 : 0;
  }
  return out;
}

void polyline(Writer& out, const std::string& layer, const std::vector<Vec2>& points, bool closed,
              LineKind line) {
  out.start("POLYLINE", layer);
  out.pair(6, line_type(line));
  out.pair(66, 1);
  out.point(10, {0, 0});
  out.pair(70, closed ? 1 : 0);
  for (Vec2 p : points) {
    out.start("VERTEX", layer);
    out.point(10, p);
  }
  out.start("SEQEND", layer);
}

void put(Writer& out, const std::string& layer, const Polyline& f) {
  polyline(out, layer, f.points, f.closed, f.line);
}
void put(Writer& out, const std::string& layer, const Patch& f) {
  polyline(out, layer, f.region.outline, true, f.line);
  for (const Polygon& hole : f.region.holes) polyline(out, layer, hole, true, f.line);
}
void put(Writer& out, const std::string& layer, const Circle& f) {
  out.start("CIRCLE", layer);
  out.pair(6, line_type(f.line));
  out.point(10, f.centre);
  out.pair(40, f.radius);
}
// Horizontal 0, 1, 2 = left, centre, right; vertical 2 = middle. R12 heights are those of capitals.
void put(Writer& out, const std::string& layer, const Text& f) {
  out.start("TEXT", layer);
  out.point(10, f.at);
  out.pair(40, 0.729 * f.size);
  out.pair(1, ascii(f.words));
  out.pair(50, f.turn_deg);
  out.pair(72, static_cast<int>(f.align));
  out.point(11, f.at);
  out.pair(73, 2);
}

void line_pattern(Writer& out, const char* name, const std::vector<double>& dashes) {
  double total = 0;
  for (double d : dashes) total += d < 0 ? -d : d;
  out.pair(0, "LTYPE");
  out.pair(2, name);
  out.pair(70, 0);
  out.pair(3, "");
  out.pair(72, 65);
  out.pair(73, static_cast<int>(dashes.size()));
  out.pair(40, total);
  for (double d : dashes) out.pair(49, d);
}

void tables(Writer& out, const Drawing& drawing) {
  out.pair(0, "SECTION");
  out.pair(2, "TABLES");
  out.pair(0, "TABLE");
  out.pair(2, "LTYPE");
  out.pair(70, 4);
  line_pattern(out, "CONTINUOUS", {});
  line_pattern(out, "DASHED", {12, -6});
  line_pattern(out, "DASHDOT", {12, -4, 0, -4});
  line_pattern(out, "DOT", {0, -4});
  out.pair(0, "ENDTAB");
  out.pair(0, "TABLE");
  out.pair(2, "LAYER");
  out.pair(70, static_cast<int>(drawing.layers.size()));
  for (const Layer& layer : drawing.layers) {
    out.pair(0, "LAYER");
    out.pair(2, layer_name(layer.name));
    out.pair(70, 0);
    out.pair(62, 7);
    out.pair(6, "CONTINUOUS");
  }
  out.pair(0, "ENDTAB");
  out.pair(0, "ENDSEC");
}

void header(Writer& out, const Drawing& drawing) {
  out.pair(999, ascii(drawing.title) + "; millimeters");
  out.pair(0, "SECTION");
  out.pair(2, "HEADER");
  out.pair(9, "$ACADVER");
  out.pair(1, "AC1009");
  out.pair(9, "$EXTMIN");
  out.point(10, drawing.extent.low);
  out.pair(9, "$EXTMAX");
  out.point(10, drawing.extent.high);
  out.pair(0, "ENDSEC");
}

}  // namespace

std::string dxf(const Drawing& drawing) {
  Writer out;
  header(out, drawing);
  tables(out, drawing);
  out.pair(0, "SECTION");
  out.pair(2, "ENTITIES");
  for (const Layer& layer : drawing.layers)
    for (const DrawnShape& shape : layer.shapes)
      std::visit([&](const auto& form) { put(out, layer_name(layer.name), form); }, shape.form);
  out.pair(0, "ENDSEC");
  out.pair(0, "EOF");
  return std::move(out).text();
}

}  // namespace nook
