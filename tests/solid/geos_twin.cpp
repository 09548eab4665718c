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

double area_of(const GEOSGeometry* shape) {
  double area = -1;
  if (shape) GEOSArea_r(context(), shape, &area);
  if (area < 0) throw std::runtime_error("GEOS gave no result");
  return area;
}

}  // namespace

double area_by_geos(const Regions& a, const Regions& b, Operation operation) {
  GEOSGeometry *left = shape_of(a), *right = shape_of(b);
  GEOSGeometry* result = operation == Operation::unite ? GEOSUnion_r(context(), left, right)
                         : operation == Operation::intersect
                             ? GEOSIntersection_r(context(), left, right)
                             : GEOSDifference_r(context(), left, right);
  const double area = area_of(result);
  for (GEOSGeometry* shape : {left, right, result}) GEOSGeom_destroy_r(context(), shape);
  return area;
}

double area_united_by_geos(const std::vector<Polygon>& rings) {
  Regions regions;
  for (const Polygon& ring : rings) regions.push_back({ring, {}});
  GEOSGeometry* all = shape_of(regions);
  GEOSGeometry* united = GEOSUnaryUnion_r(context(), all);
  const double area = area_of(united);
  GEOSGeom_destroy_r(context(), all);
  GEOSGeom_destroy_r(context(), united);
  return area;
}

}  // namespace nook::twin
