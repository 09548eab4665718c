# Reads DXF files with ezdxf and prints what is in each as one line of JSON.
import json
import sys

import ezdxf


def found(path):
    doc = ezdxf.readfile(path)
    space = doc.modelspace()
    return {
        "version": doc.dxfversion,
        "errors": [str(e) for e in doc.audit().errors],
        "layers": sorted(layer.dxf.name for layer in doc.layers),
        "polylines": [{"layer": p.dxf.layer, "closed": p.is_closed,
                       "points": [[v.dxf.location.x, v.dxf.location.y] for v in p.vertices]}
                      for p in space.query("POLYLINE")],
        "circles": [{"layer": c.dxf.layer, "centre": [c.dxf.center.x, c.dxf.center.y],
                     "radius": c.dxf.radius} for c in space.query("CIRCLE")],
        "texts": [{"layer": t.dxf.layer, "words": ezdxf.decode_dxf_unicode(t.dxf.text)}
                  for t in space.query("TEXT")],
    }


for path in sys.argv[1:]:
    print(json.dumps(found(path)))
