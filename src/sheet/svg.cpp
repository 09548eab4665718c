// Shapes written as SVG elements; nothing is worked out here but the change of frame.
#include "sheet/svg.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <iterator>

namespace nook {
namespace {

constexpr std::array<const char*, 7> kLineClass = {"l0",       "l-thin",     "l-normal", "l-heavy",
                                                   "l-dashed", "l-dash-dot", "l-dotted"};
constexpr std::array<const char*, 6> kPaintClass = {"p0",     "p-paper", "p-wood",
                                                    "p-wall", "p-shade", "p-ink"};

const char* name_of(LineKind line) {
  return kLineClass[static_cast<std::size_t>(line)];
}
const char* name_of(Paint paint) {
  return kPaintClass[static_cast<std::size_t>(paint)];
}

// To a thousandth of a millimeter of paper, without trailing zeros and without -0.
std::string number(double x) {
  std::string text = fmt::format("{:.3f}", x);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

class Writer {
 public:
  explicit Writer(const Drawing& drawing) : drawing_(drawing) {}

  void shape(const DrawnShape& shape) {
    const std::string name =
        shape.name.empty() ? "" : fmt::format(" data-name=\"{}\"", escaped(shape.name));
    std::visit([&](const auto& form) { put(form, name); }, shape.form);
  }
  std::string text() && { return std::move(out_); }

 private:
  std::string x(Vec2 p) const { return number((p.x - drawing_.extent.low.x) * drawing_.scale); }
  std::string y(Vec2 p) const { return number((drawing_.extent.high.y - p.y) * drawing_.scale); }
  std::string size(double real) const { return number(real * drawing_.scale); }

  std::string path(const std::vector<Vec2>& points, bool closed) const {
    std::string d;
    for (std::size_t i = 0; i < points.size(); ++i)
      d += fmt::format("{}{} {}", i ? "L" : "M", x(points[i]), y(points[i]));
    return closed ? d + "Z" : d;
  }
  template <class... Args>
  void line(fmt::format_string<Args...> format, Args&&... args) {
    fmt::format_to(std::back_inserter(out_), format, std::forward<Args>(args)...);
  }

  void put(const Polyline& f, const std::string& name) {
    line("<path class=\"p0 {}\" d=\"{}\"{}/>\n", name_of(f.line), path(f.points, f.closed), name);
  }
  void put(const Patch& f, const std::string& name) {
    std::string d = path(f.region.outline, true);
    for (const Polygon& hole : f.region.holes) d += path(hole, true);
    line("<path class=\"{} {}\" d=\"{}\"{}/>\n", name_of(f.paint), name_of(f.line), d, name);
  }
  void put(const Circle& f, const std::string& name) {
    line("<circle class=\"{} {}\" cx=\"{}\" cy=\"{}\" r=\"{}\"{}/>\n", name_of(f.paint),
         name_of(f.line), x(f.centre), y(f.centre), size(f.radius), name);
  }
  void put(const Text& f, const std::string& name) {
    constexpr std::array<const char*, 3> kAnchor = {"start", "middle", "end"};
    const std::string turn = f.turn_deg == 0 ? ""
                                             : fmt::format(" transform=\"rotate({} {} {})\"",
                                                           number(-f.turn_deg), x(f.at), y(f.at));
    line(
        "<text class=\"w{}\" x=\"{}\" y=\"{}\" dy=\".365em\" font-size=\"{}\" "
        "text-anchor=\"{}\"{}{}>"
        "{}</text>\n",
        f.bold ? " b" : "", x(f.at), y(f.at), size(f.size),
        kAnchor[static_cast<std::size_t>(f.align)], turn, name, escaped(f.words));
  }

  const Drawing& drawing_;
  std::string out_;
};

std::string body(const Drawing& drawing) {
  std::string out;
  for (const Layer& layer : drawing.layers) {
    Writer writer(drawing);
    for (const DrawnShape& shape : layer.shapes) writer.shape(shape);
    out += fmt::format("<g data-layer=\"{}\">\n{}</g>\n", escaped(layer.name),
                       std::move(writer).text());
  }
  return out;
}

std::string opened(const Drawing& drawing, const std::string& id, const std::string& more) {
  const double width = drawing.extent.width() * drawing.scale;
  const double height = drawing.extent.height() * drawing.scale;
  return fmt::format(
      "<svg {}viewBox=\"0 0 {} {}\" role=\"img\" aria-labelledby=\"{}-t {}-d\" data-scale=\"{}\">\n"
      "<title id=\"{}-t\">{}</title>\n<desc id=\"{}-d\">{}</desc>\n",
      more, number(width), number(height), id, id, fmt::format("{:.9g}", drawing.scale), id,
      escaped(drawing.title), id, escaped(drawing.description));
}

bool allowed_in_xml(unsigned char c) {
  return c >= 0x20 || c == '\t' || c == '\n' || c == '\r';
}

}  // namespace

std::string escaped(std::string_view text) {
  std::string out;
  for (char c : text) {
    if (c == '&')
      out += "&amp;";
    else if (c == '<')
      out += "&lt;";
    else if (c == '>')
      out += "&gt;";
    else if (c == '"')
      out += "&quot;";
    else if (!allowed_in_xml(static_cast<unsigned char>(c)))
      out += "\xEF\xBF\xBD";
    else
      out += c;
  }
  return out;
}

std::string svg_style() {
  return ":root{--paper:#fff;--ink:#111;--wood:#ead9b5;--wall:#dcdcdc;--shade:#c4c4c4}\n"
         "@media (prefers-color-scheme:dark){:root{--paper:#15171a;--ink:#eee;--wood:#5a4a2c;"
         "--wall:#33373d;--shade:#4a4f57}}\n"
         "@media print{:root{--paper:#fff;--ink:#000;--wood:#ead9b5;--wall:#dcdcdc;"
         "--shade:#c4c4c4}}\n"
         "svg path,svg circle{stroke:var(--ink);stroke-linejoin:round}svg path{fill-rule:evenodd}\n"
         "svg .l0{stroke:none}svg .l-thin{stroke-width:.18}svg .l-normal{stroke-width:.35}"
         "svg .l-heavy{stroke-width:.75}svg .l-dashed{stroke-width:.3;stroke-dasharray:2.2 1.2}"
         "svg .l-dash-dot{stroke-width:.3;stroke-dasharray:5 1 .8 1}"
         "svg .l-dotted{stroke-width:.5;stroke-linecap:round;stroke-dasharray:0 1.3}\n"
         "svg .p0{fill:none}svg .p-paper{fill:var(--paper)}svg .p-wood{fill:var(--wood)}"
         "svg .p-wall{fill:var(--wall)}svg .p-shade{fill:var(--shade)}svg .p-ink{fill:var(--ink)}\n"
         "svg .w{font-family:'DejaVu Sans',Verdana,Roboto,sans-serif;fill:var(--ink);"
         "stroke:var(--paper);stroke-width:.22em;stroke-linejoin:round;paint-order:stroke}"
         "svg .b{font-weight:bold}\n";
}

std::string svg(const Drawing& drawing) {
  const std::string size =
      fmt::format("xmlns=\"http://www.w3.org/2000/svg\" width=\"{}mm\" height=\"{}mm\" ",
                  number(drawing.extent.width() * drawing.scale),
                  number(drawing.extent.height() * drawing.scale));
  return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + opened(drawing, "drawing", size) +
         "<style>\n" + svg_style() + "svg{background:var(--paper)}\n</style>\n" + body(drawing) +
         "</svg>\n";
}

std::string inline_svg(const Drawing& drawing, const std::string& id) {
  const std::string style =
      fmt::format("style=\"max-width:{}mm\" ", number(drawing.extent.width() * drawing.scale));
  return opened(drawing, id, style) + body(drawing) + "</svg>\n";
}

}  // namespace nook
