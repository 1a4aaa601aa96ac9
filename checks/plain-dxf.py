#!/usr/bin/python3
"""Writes one skirt panel in three sizes as general drawing programs do, by ezdxf, into the folder named, and truth.json as ezdxf itself measures it.

All on one layer, no unit said (or a wrong one), every edge by itself; beside it a square of 100 mm. The panel is invented.
"""
import json
import math
import os
import sys

import ezdxf
from ezdxf import path
from ezdxf.disassemble import recursive_decompose
from ezdxf.math import BSpline, Matrix44, Vec2, bulge_to_arc

FOLDER = sys.argv[1]
SIZES = 3
# Drawing units for a millimetre, and the unit that the header says (0: none; 6: metres, which is wrong here).
UNITS = {"direct": (1 / 25.4, 0), "nested": (0.1, 0), "mirrored": (100, 0), "below": (1, 6)}


def corners(k):
    """Hem at the fold, hem at the side, waist at the side, waist at the fold; mm."""
    return [(0, 0), (260 + 12 * k, 0), (180 + 12 * k, 600 + 4 * k), (0, 590 + 4 * k)]


def side(layout, how, b, c, s):
    controls = [b, b + Vec2(-8, 150) * s, c + Vec2(40, -220) * s, c]
    curve = BSpline(controls, order=4)
    bulges = [(b.x, b.y, 0.12), ((b.x + c.x) / 2 + 12 * s, (b.y + c.y) / 2, 0.05), (c.x, c.y, 0)]
    if how == "spline":
        layout.add_open_spline([(p.x, p.y, 0) for p in controls], degree=3)
    elif how == "fit":
        layout.add_spline(list(curve.approximate(6)))
    elif how == "ellipse":
        w, h = b.x - c.x, (c.y - b.y) / math.sin(math.radians(60))
        layout.add_ellipse((b.x - 2 * w, b.y), major_axis=(0, h), ratio=2 * w / h, start_param=-math.pi / 2, end_param=-math.pi / 6)
    elif how == "lines":
        points = list(curve.flattening(0.01 * s))
        for p, q in zip(points, points[1:]):
            layout.add_line(p, q)
    elif how == "lwpolyline":
        layout.add_lwpolyline(bulges, format="xyb")
    else:
        layout.add_polyline2d(bulges, format="xyb")


def waist(layout, how, c, d, s):
    """An arc that hangs 8 mm low."""
    bulge = -2 * 8 * s / c.distance(d)
    if how == "polyline":
        layout.add_polyline2d([(c.x, c.y, bulge), (d.x, d.y, 0)], format="xyb")
        return
    centre, start, end, radius = bulge_to_arc(c, d, bulge)
    layout.add_arc(centre, radius, math.degrees(start), math.degrees(end))


def draw(layout, how, s):
    """Gives for every size how many things each of its edges is made of."""
    counts = []
    for k in range(SIZES):
        a, b, c, d = [Vec2(x * s, y * s) for x, y in corners(k)]
        layout.add_line(a, b)
        layout.add_line(d, a)
        before = len(layout)
        side(layout, how, b, c, s)
        counts.append([1, 1, len(layout) - before, 1])
        waist(layout, how, c, d, s)
    return counts


def put(doc, how, place, s):
    msp = doc.modelspace()
    if place in ("direct", "below"):
        counts = draw(msp, how, s)
        # Mirrored, arcs and polylines are written as seen from below.
        for entity in list(msp) if place == "below" else []:
            entity.transform(Matrix44.scale(-1, 1, 1))
        return counts
    inner = doc.blocks.new("INNER", base_point=(10 * s, 20 * s))
    counts = draw(inner, how, s)
    outer = doc.blocks.new("OUTER", base_point=(5 * s, 0))
    outer.add_blockref("INNER", (30 * s, 40 * s), dxfattribs={"xscale": 0.4, "yscale": 0.4, "rotation": -25})
    over = -1 if place == "mirrored" else 1
    msp.add_blockref("OUTER", (100 * s, 80 * s), dxfattribs={"xscale": 2.5 * over, "yscale": 2.5, "rotation": 25 * over})
    return counts


def square(msp, s, place):
    x, y, w = 700 * s, 50 * s, 100 * s
    box = [(x, y), (x + w, y), (x + w, y + w), (x, y + w)]
    if place == "nested":
        for p, q in zip(box, box[1:] + box[:1]):
            msp.add_line(p, q)
    else:
        msp.add_polyline2d(box, close=True)
    msp.add_text("100 mm", dxfattribs={"height": 6 * s, "insert": (x + 20 * s, y + 50 * s)})


def chained(parts):
    """One ring of lines that follow one another in any direction."""
    left = [list(part) for part in parts]
    ring = left.pop(0)
    while left:
        ways = [(i, back) for i in range(len(left)) for back in (0, -1)]
        i, back = min(ways, key=lambda way: ring[-1].distance(left[way[0]][way[1]]))
        part = left.pop(i)
        ring += (part[::-1] if back else part)[1:]
    return ring


def length(points):
    return sum(p.distance(q) for p, q in zip(points, points[1:]))


def area(points):
    return abs(sum(p.x * q.y - q.x * p.y for p, q in zip(points, points[1:] + points[:1]))) / 2


def measured(msp, counts, s):
    parts = [[Vec2(v) for v in path.make_path(e).flattening(1e-4 * s, segments=64)] for e in recursive_decompose(msp)]
    sizes = []
    for edges in counts:
        own = [[parts.pop(0) for _ in range(n)] for n in edges]
        ring = chained([part for edge in own for part in edge])
        sizes.append({"area": area(ring) / s**2, "edges": [sum(map(length, edge)) / s for edge in own]})
    return sizes


truth = {}
for version, hows in (("R12", ["polyline", "lines"]), ("R2000", ["spline", "fit", "polyline"]), ("R2010", ["ellipse", "lwpolyline", "lines"])):
    for how in hows:
        for place, (s, units) in UNITS.items():
            doc = ezdxf.new(version)
            doc.header["$INSUNITS"] = units
            counts = put(doc, how, place, s)
            name = f"{version}-{how}-{place}.dxf"
            truth[name] = measured(doc.modelspace(), counts, s)
            square(doc.modelspace(), s, place)
            doc.saveas(os.path.join(FOLDER, name))
with open(os.path.join(FOLDER, "truth.json"), "w", encoding="utf-8") as f:
    json.dump(truth, f)
