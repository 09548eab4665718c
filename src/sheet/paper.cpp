// The one file that draws with cairo; the library is loaded on demand.
#include "sheet/paper.h"

#include <cairo-pdf.h>
#include <cairo.h>
#include <dlfcn.h>

#include <cmath>
#include <numbers>

#include "sheet/text_width.h"

namespace nook {
namespace {

constexpr double kPointsPerMillimetre = 72 / 25.4;

// Every function of cairo used here, found by its name once.
struct Cairo {
  void* library = open();
#define NOOK_CAIRO(name) \
  decltype(&::cairo_##name) name = found<decltype(&::cairo_##name)>("cairo_" #name)
  NOOK_CAIRO(pdf_surface_create_for_stream);
  NOOK_CAIRO(pdf_surface_set_size);
  NOOK_CAIRO(pdf_surface_set_metadata);
  NOOK_CAIRO(image_surface_create);
  NOOK_CAIRO(surface_write_to_png_stream);
  NOOK_CAIRO(surface_show_page);
  NOOK_CAIRO(surface_finish);
  NOOK_CAIRO(surface_status);
  NOOK_CAIRO(surface_destroy);
  NOOK_CAIRO(create);
  NOOK_CAIRO(destroy);
  NOOK_CAIRO(status);
  NOOK_CAIRO(status_to_string);
  NOOK_CAIRO(save);
  NOOK_CAIRO(restore);
  NOOK_CAIRO(scale);
  NOOK_CAIRO(translate);
  NOOK_CAIRO(rotate);
  NOOK_CAIRO(new_path);
  NOOK_CAIRO(move_to);
  NOOK_CAIRO(line_to);
  NOOK_CAIRO(close_path);
  NOOK_CAIRO(arc);
  NOOK_CAIRO(paint);
  NOOK_CAIRO(fill_preserve);
  NOOK_CAIRO(stroke);
  NOOK_CAIRO(set_fill_rule);
  NOOK_CAIRO(set_line_width);
  NOOK_CAIRO(set_line_cap);
  NOOK_CAIRO(set_line_join);
  NOOK_CAIRO(set_dash);
  NOOK_CAIRO(set_source_rgb);
  NOOK_CAIRO(select_font_face);
  NOOK_CAIRO(set_font_size);
  NOOK_CAIRO(text_path);
  NOOK_CAIRO(show_text);
#undef NOOK_CAIRO

  static const Cairo& loaded() {
    static const Cairo cairo;
    return cairo;
  }

 private:
  static void* open() {
    void* handle = dlopen("libcairo.so.2", RTLD_NOW | RTLD_LOCAL);
    if (!handle) throw NoPaper("cannot draw PDF and PNG: libcairo.so.2 is not installed");
    return handle;
  }
  template <class Function>
  Function found(const char* name) const {
    void* at = dlsym(library, name);
    if (!at) throw NoPaper(std::string("cannot draw PDF and PNG: cairo lacks ") + name);
    return reinterpret_cast<Function>(at);
  }
};

struct Color {
  double r, g, b;
};
constexpr Color kInk{0, 0, 0}, kPaper{1, 1, 1};

Color color_of(Paint paint) {
  switch (paint) {
    case Paint::wood:
      return {0.918, 0.851, 0.710};
    case Paint::wall:
      return {0.863, 0.863, 0.863};
    case Paint::shade:
      return {0.769, 0.769, 0.769};
    case Paint::ink:
      return kInk;
    default:
      return kPaper;
  }
}

// Widths and dashes in paper mm: those of svg_style().
struct Stroke {
  double width = 0;
  std::vector<double> dashes;
  bool round = false;
};
Stroke stroke_of(LineKind line) {
  switch (line) {
    case LineKind::none:
      return {};
    case LineKind::thin:
      return {0.18, {}};
    case LineKind::normal:
      return {0.35, {}};
    case LineKind::heavy:
      return {0.75, {}};
    case LineKind::dashed:
      return {0.3, {2.2, 1.2}};
    case LineKind::dash_dot:
      return {0.3, {5, 1, 0.8, 1}};
    case LineKind::dotted:
      return {0.5, {0, 1.3}, true};
  }
  return {};
}

class Pen {
 public:
  Pen(cairo_t* to, const Drawing& drawing) : to_(to), drawing_(drawing) {
    c_.set_fill_rule(to_, CAIRO_FILL_RULE_EVEN_ODD);
    c_.set_line_join(to_, CAIRO_LINE_JOIN_ROUND);
  }

  void all() {
    for (const Layer& layer : drawing_.layers)
      for (const DrawnShape& shape : layer.shapes)
        std::visit([&](const auto& form) { put(form); }, shape.form);
  }

 private:
  double x(Vec2 p) const { return (p.x - drawing_.extent.low.x) * drawing_.scale; }
  double y(Vec2 p) const { return (drawing_.extent.high.y - p.y) * drawing_.scale; }

  void source(Color color) { c_.set_source_rgb(to_, color.r, color.g, color.b); }
  void path(const std::vector<Vec2>& points, bool closed) {
    for (std::size_t i = 0; i < points.size(); ++i)
      i ? c_.line_to(to_, x(points[i]), y(points[i])) : c_.move_to(to_, x(points[i]), y(points[i]));
    if (closed) c_.close_path(to_);
  }
  void ink(Paint paint, LineKind line) {
    if (paint != Paint::none) {
      source(color_of(paint));
      c_.fill_preserve(to_);
    }
    const Stroke stroke = stroke_of(line);
    if (stroke.width > 0) {
      source(kInk);
      c_.set_line_width(to_, stroke.width);
      c_.set_line_cap(to_, stroke.round ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
      c_.set_dash(to_, stroke.dashes.data(), static_cast<int>(stroke.dashes.size()), 0);
      c_.stroke(to_);
    }
    c_.new_path(to_);
  }

  void put(const Polyline& f) {
    path(f.points, f.closed);
    ink(Paint::none, f.line);
  }
  void put(const Patch& f) {
    path(f.region.outline, true);
    for (const Polygon& hole : f.region.holes) path(hole, true);
    ink(f.paint, f.line);
  }
  void put(const Circle& f) {
    c_.new_path(to_);
    c_.arc(to_, x(f.centre), y(f.centre), f.radius * drawing_.scale, 0, 2 * std::numbers::pi);
    c_.close_path(to_);
    ink(f.paint, f.line);
  }
  void put(const Text& f) {
    const double size = f.size * drawing_.scale, width = width_of(f.words, size, f.bold);
    const double back = f.align == Align::start ? 0 : f.align == Align::end ? width : width / 2;
    c_.save(to_);
    c_.translate(to_, x(f.at), y(f.at));
    c_.rotate(to_, -f.turn_deg * std::numbers::pi / 180);
    c_.select_font_face(to_, "DejaVu Sans", CAIRO_FONT_SLANT_NORMAL,
                        f.bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL);
    c_.set_font_size(to_, size);
    if (f.rim) rim(f.words, -back, kCapHeight / 2 * size, 0.22 * size);
    source(kInk);
    c_.move_to(to_, -back, kCapHeight / 2 * size);
    c_.show_text(to_, f.words.c_str());
    c_.restore(to_);
    c_.new_path(to_);
  }
  void rim(const std::string& words, double at_x, double at_y, double width) {
    c_.move_to(to_, at_x, at_y);
    c_.text_path(to_, words.c_str());
    source(kPaper);
    c_.set_line_width(to_, width);
    c_.set_dash(to_, nullptr, 0, 0);
    c_.stroke(to_);
  }

  const Cairo& c_ = Cairo::loaded();
  cairo_t* to_;
  const Drawing& drawing_;
};

cairo_status_t collect(void* bytes, const unsigned char* data, unsigned length) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

void check(cairo_status_t status) {
  if (status != CAIRO_STATUS_SUCCESS)
    throw NoPaper(std::string("cairo: ") + Cairo::loaded().status_to_string(status));
}

// Draws one drawing on a surface, `dots` of its units to a paper mm.
void paint(cairo_surface_t* surface, const Drawing& drawing, double dots, bool ground) {
  const Cairo& c = Cairo::loaded();
  cairo_t* to = c.create(surface);
  if (ground) {
    c.set_source_rgb(to, 1, 1, 1);
    c.paint(to);
  }
  c.scale(to, dots, dots);
  Pen(to, drawing).all();
  const cairo_status_t status = c.status(to);
  c.destroy(to);
  check(status);
}

double wide(const Drawing& drawing) {
  return drawing.extent.width() * drawing.scale;
}
double high(const Drawing& drawing) {
  return drawing.extent.height() * drawing.scale;
}

}  // namespace

std::string pdf(const std::vector<Drawing>& pages, const std::string& title) {
  const Cairo& c = Cairo::loaded();
  std::string bytes;
  cairo_surface_t* surface = c.pdf_surface_create_for_stream(collect, &bytes, 1, 1);
  // A fixed date: the same drawings give the same bytes.
  c.pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, "2000-01-01T00:00:00Z");
  c.pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, title.c_str());
  for (const Drawing& page : pages) {
    c.pdf_surface_set_size(surface, wide(page) * kPointsPerMillimetre,
                           high(page) * kPointsPerMillimetre);
    paint(surface, page, kPointsPerMillimetre, false);
    c.surface_show_page(surface);
  }
  c.surface_finish(surface);
  const cairo_status_t status = c.surface_status(surface);
  c.surface_destroy(surface);
  check(status);
  return bytes;
}

std::string png(const Drawing& drawing, double dots) {
  const Cairo& c = Cairo::loaded();
  std::string bytes;
  cairo_surface_t* surface =
      c.image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(std::ceil(wide(drawing) * dots)),
                             static_cast<int>(std::ceil(high(drawing) * dots)));
  paint(surface, drawing, dots, true);
  const cairo_status_t status = c.surface_write_to_png_stream(surface, collect, &bytes);
  c.surface_destroy(surface);
  check(status);
  return bytes;
}

}  // namespace nook

#ifdef __SANITIZE_ADDRESS__
// Found by name by the leak checker: what fontconfig never frees is not ours to free.
extern "C" const char* __lsan_default_suppressions() {
  return "leak:libfontconfig\n";
}
#endif
