// GEOS through its C interface.
#include "geos_twin.h"

#include <geos_c.h>

#include <stdexcept>

namespace nook::twin {
namespace {

GEOSContextHandle_t context() {
  static const GEOSContextHandle_t handle = GEOS_init_r();
  return handle;
}

GEOSGeometry* ring_of(const Polygon& polygon) {
  const auto n = static_cast<unsigned>(polygon.size());
  GEOSCoordSequence* points = GEOSCoordSeq_create_r(context(), n + 1, 2);
  for (unsigned i = 0; i <= n; ++i)
    GEOSCoordSeq_setXY_r(context(), points, i, polygon[i % n].x, polygon[i % n].y);
  return GEOSGeom_createLinearRing_r(context(), points);
}

GEOSGeometry* shape_of(const Regions& regions) {
  std::vector<GEOSGeometry*> shapes;
  for (const Region& region : regions) {
    std::vector<GEOSGeometry*> holes;
    for (const Polygon& hole : region.holes) holes.push_back(ring_of(hole));
    shapes.push_back(GEOSGeom_createPolygon_r(context(), ring_of(region.outline), holes.data(),
                                              static_cast<unsigned>(holes.size())));
  }
  return GEOSGeom_createCollection_r(context(), GEOS_MULTIPOLYGON, shapes.data(),
                                     static_cast<unsigned>(shapes.size()));
}

}  // namespace

double area_by_geos(const Regions& a, const Regions& b, Operation operation) {
  GEOSGeometry *left = shape_of(a), *right = shape_of(b);
  GEOSGeometry* result = operation == Operation::unite ? GEOSUnion_r(context(), left, right)
                         : operation == Operation::intersect
                             ? GEOSIntersection_r(context(), left, right)
                             : GEOSDifference_r(context(), left, right);
  double area = -1;
  if (result) GEOSArea_r(context(), result, &area);
  for (GEOSGeometry* shape : {left, right, result})
    if (shape) GEOSGeom_destroy_r(context(), shape);
  if (area < 0) throw std::runtime_error("GEOS gave no result");
  return area;
}

}  // namespace nook::twin
