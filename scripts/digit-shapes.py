"""The letters that digits are told from, as polylines on standard output: one JSON list of {face, char, filled, lines}.

Filled ones are drawn by cairo from open faces: DejaVu (on Debian), and from the folders of packages that this project
installs Alegreya Sans and Liberation Sans (SIL Open Font License) and the serif and fixed faces beside pdfjs (BSD).
Single strokes are described here, as a pen draws them. scripts/digit-shapes.ts makes the table of them:

    /usr/bin/python3 scripts/digit-shapes.py > digits.json && npx tsx scripts/digit-shapes.ts digits.json
"""
import json
import math
import os
import string
import sys
import tempfile

ROOT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
MODULES = os.path.join(ROOT, "node_modules")
FACES = [
    ("DejaVu Sans", 0, 0), ("DejaVu Sans", 0, 1), ("DejaVu Sans", 1, 0), ("DejaVu Serif", 0, 0), ("DejaVu Sans Mono", 0, 0),
    ("Liberation Sans", 0, 0), ("Liberation Sans", 0, 1), ("Liberation Sans", 1, 0),
    ("Chrom Serif OTF", 0, 0), ("Chrom Serif OTF", 0, 1), ("Chrom Fixed OTF", 0, 0),
    ("Alegreya Sans", 0, 0), ("Alegreya Sans", 0, 1), ("Alegreya Sans", 1, 0),
]  # family, slant, weight as cairo counts them
CHARS = string.digits + string.ascii_letters


def arc(cx, cy, rx, ry, a, b):
    """Points from angle a to b, degrees, counter-clockwise where b is larger."""
    n = max(3, round(abs(b - a) / 15))
    return [(cx + rx * math.cos(math.radians(a + (b - a) * k / n)), cy + ry * math.sin(math.radians(a + (b - a) * k / n))) for k in range(n + 1)]


# As a pen draws them, 4 wide and 6 high; round ones and, of fewer and straight strokes, angular ones.
PEN = {
    "0": [[arc(2, 3, 2, 3, 90, 450)], [[(1, 0), (0, 1), (0, 5), (1, 6), (3, 6), (4, 5), (4, 1), (3, 0), (1, 0)]],
          [arc(2, 4, 2, 2, 0, 180) + arc(2, 2, 2, 2, 180, 360) + [(4, 4)]]],
    "1": [[[(0.6, 4.8), (2, 6), (2, 0)]], [[(0, 4.5), (1.5, 6), (1.5, 0)]], [[(0.6, 4.8), (2, 6), (2, 0)], [(0.6, 0), (3.4, 0)]], [[(1, 5), (2, 6), (2, 0)]]],
    "2": [[arc(2, 4.2, 1.9, 1.8, 165, -35) + [(0, 0), (4, 0)]], [[(0, 5), (1, 6), (3, 6), (4, 5), (4, 4), (0, 0), (4, 0)]],
          [arc(2, 4.2, 1.9, 1.8, 180, -10) + [(3.2, 2.9), (0.6, 1), (0, 0), (4, 0)]], [[(0, 5), (1, 6), (3, 6), (4, 5), (4, 4), (3, 3), (1, 2), (0, 1), (0, 0), (4, 0)]]],
    "3": [[arc(1.9, 4.5, 1.7, 1.5, 150, -90) + arc(1.9, 1.55, 2, 1.55, 90, -150)], [[(0, 6), (4, 6), (1.7, 3.7)] + arc(1.9, 1.9, 2.1, 1.9, 80, -150)],
          [[(0, 5), (1, 6), (3, 6), (4, 5), (4, 4), (3, 3), (4, 2), (4, 1), (3, 0), (1, 0), (0, 1)], [(1.5, 3), (3, 3)]],
          [[(0, 6), (4, 6), (2, 4), (3, 4), (4, 3), (4, 1), (3, 0), (1, 0), (0, 1)]]],
    "4": [[[(3, 0), (3, 6), (0, 2), (4, 2)]], [[(2, 6), (0, 1.8), (4, 1.8)], [(3, 3.6), (3, 0)]], [[(0, 6), (0, 3), (4, 3)], [(4, 6), (4, 0)]], [[(3, 0), (3, 6), (0, 1.5), (4, 1.5)]]],
    "5": [[[(3.6, 6), (0.6, 6), (0.3, 3.2)] + arc(1.9, 1.9, 2.1, 1.9, 130, -150)], [[(4, 6), (0, 6), (0, 3.5), (3, 3.5), (4, 2.5), (4, 1), (3, 0), (1, 0), (0, 1)]],
          [[(4, 6), (0, 6), (0, 3), (1, 4), (3, 4), (4, 3), (4, 1), (3, 0), (1, 0), (0, 1)]]],
    "6": [[arc(2.4, 3.4, 2.4, 2.6, 60, 180) + [(0, 1.9)] + arc(2, 1.9, 2, 1.9, 180, 540)], [[(4, 5), (3, 6), (1, 6), (0, 5), (0, 1), (1, 0), (3, 0), (4, 1), (4, 2.5), (3, 3.5), (1, 3.5), (0, 2.5)]],
          [[(3.2, 6), (1, 3.4)] + arc(2, 1.9, 2, 1.9, 145, 505)]],
    "7": [[[(0, 6), (4, 6), (1.4, 0)]], [[(0, 6), (4, 6), (1, 0)], [(1.1, 3), (3.7, 3)]], [[(0, 6), (4, 6), (4, 5), (1.5, 2), (1.5, 0)]]],
    "8": [[arc(2, 4.5, 1.7, 1.5, 270, 630), arc(2, 1.55, 2, 1.55, 90, 450)], [arc(2, 4.5, 1.7, 1.5, -90, 270) + arc(2, 1.55, 2, 1.55, 90, -270)],
          [[(1, 3), (0, 4), (0, 5), (1, 6), (3, 6), (4, 5), (4, 4), (3, 3), (1, 3), (0, 2), (0, 1), (1, 0), (3, 0), (4, 1), (4, 2), (3, 3)]]],
    "9": [[arc(1.6, 2.6, 2.4, 2.6, 240, 360) + [(4, 4.1)] + arc(2, 4.1, 2, 1.9, 0, 360)], [[(0, 1), (1, 0), (3, 0), (4, 1), (4, 5), (3, 6), (1, 6), (0, 5), (0, 3.5), (1, 2.5), (3, 2.5), (4, 3.5)]],
          [[(0.8, 0), (3, 2.6)] + arc(2, 4.1, 2, 1.9, -35, 325)]],
    "A": [[[(0, 0), (2, 6), (4, 0)], [(0.7, 2), (3.3, 2)]]],
    "B": [[[(0, 0), (0, 6), (2.4, 6)] + arc(2.4, 4.6, 1.4, 1.4, 90, -90) + [(0, 3.2)], [(2.4, 3.2)] + arc(2.4, 1.6, 1.6, 1.6, 90, -90) + [(0, 0)]],
          [[(0, 0), (0, 6), (3, 6), (4, 5), (4, 4), (3, 3), (4, 2), (4, 1), (3, 0), (0, 0)], [(0, 3), (3, 3)]]],
    "C": [[arc(2.2, 3, 2.2, 3, 45, 315)], [[(4, 1), (3, 0), (1, 0), (0, 1), (0, 5), (1, 6), (3, 6), (4, 5)]]],
    "D": [[[(0, 0), (0, 6), (1.6, 6)] + arc(1.6, 3, 2.4, 3, 90, -90) + [(0, 0)]], [[(0, 0), (0, 6), (2.6, 6), (4, 4.6), (4, 1.4), (2.6, 0), (0, 0)]]],
    "E": [[[(4, 6), (0, 6), (0, 0), (4, 0)], [(0, 3), (3, 3)]]],
    "F": [[[(4, 6), (0, 6), (0, 0)], [(0, 3), (3, 3)]]],
    "G": [[arc(2.2, 3, 2.2, 3, 45, 340) + [(4.3, 2.6), (2.4, 2.6)]], [[(4, 5), (3, 6), (1, 6), (0, 5), (0, 1), (1, 0), (3, 0), (4, 1), (4, 3), (2, 3)]]],
    "H": [[[(0, 0), (0, 6)], [(4, 0), (4, 6)], [(0, 3), (4, 3)]]],
    "I": [[[(0, 0), (0, 6)]], [[(1, 0), (1, 6)], [(0, 0), (2, 0)], [(0, 6), (2, 6)]]],
    "J": [[[(3, 6), (3, 2)] + arc(1.5, 1.6, 1.5, 1.6, 0, -170)]],
    "K": [[[(0, 0), (0, 6)], [(4, 6), (0, 2)], [(1.4, 3.4), (4, 0)]]],
    "L": [[[(0, 6), (0, 0), (4, 0)]], [[(0, 6), (0, 0), (3, 0)]]],
    "M": [[[(0, 0), (0, 6), (2, 2), (4, 6), (4, 0)]], [[(0, 0), (0, 6), (2, 3.5), (4, 6), (4, 0)]], [[(0, 0), (0, 6), (2, 0), (4, 6), (4, 0)]]],
    "N": [[[(0, 0), (0, 6), (4, 0), (4, 6)]]],
    "O": [[arc(2.5, 3, 2.5, 3, 90, 450)], [arc(2.5, 2.5, 2.5, 2.5, 90, 450)]],
    "P": [[[(0, 0), (0, 6), (2.4, 6)] + arc(2.4, 4.5, 1.6, 1.5, 90, -90) + [(0, 3)]]],
    "Q": [[arc(2.5, 3, 2.5, 3, 90, 450), [(3, 1.6), (4.8, 0)]]],
    "R": [[[(0, 0), (0, 6), (2.4, 6)] + arc(2.4, 4.5, 1.6, 1.5, 90, -90) + [(0, 3)], [(2.2, 3), (4, 0)]]],
    "S": [[arc(2, 4.5, 1.8, 1.5, 25, 270) + arc(2, 1.5, 1.9, 1.5, 90, -155)], [[(4, 5), (3, 6), (1, 6), (0, 5), (0, 4), (1, 3), (3, 3), (4, 2), (4, 1), (3, 0), (1, 0), (0, 1)]]],
    "T": [[[(0, 6), (4, 6)], [(2, 6), (2, 0)]]],
    "U": [[[(0, 6), (0, 2)] + arc(2, 2, 2, 2, 180, 360) + [(4, 6)]]],
    "V": [[[(0, 6), (2, 0), (4, 6)]]],
    "W": [[[(0, 6), (1.2, 0), (2.5, 4), (3.8, 0), (5, 6)]]],
    "X": [[[(0, 0), (4, 6)], [(0, 6), (4, 0)]]],
    "Y": [[[(0, 6), (2, 3), (4, 6)], [(2, 3), (2, 0)]]],
    "Z": [[[(0, 6), (4, 6), (0, 0), (4, 0)]], [[(0, 6), (4, 6), (0, 0), (4, 0)], [(1, 3), (3, 3)]]],
    "a": [[arc(2, 2, 2, 2, 0, 360), [(4, 4), (4, 0)]]],
    "b": [[[(0, 6), (0, 0)], arc(2, 2, 2, 2, 180, 540)]],
    "d": [[[(4, 6), (4, 0)], arc(2, 2, 2, 2, 0, 360)]],
    "e": [[[(0, 2), (4, 2)] + arc(2, 2, 2, 2, 0, 310)]],
    "g": [[arc(2, 4, 2, 2, 0, 360), [(4, 6), (4, 1.5)] + arc(2, 1.5, 2, 1.5, 0, -150)]],
    "h": [[[(0, 6), (0, 0)], arc(2, 2, 2, 2, 180, 0) + [(4, 0)]]],
    "n": [[[(0, 4), (0, 0)], arc(2, 2, 2, 2, 180, 0) + [(4, 0)]]],
    "q": [[arc(2, 4, 2, 2, 0, 360), [(4, 6), (4, 0)]]],
    "r": [[[(0, 4), (0, 0)], arc(1.6, 2.4, 1.6, 1.6, 180, 40)]],
    "t": [[[(1.5, 6), (1.5, 0), (3, 0)], [(0, 4), (3, 4)]]],
    "u": [[[(0, 4), (0, 2)] + arc(2, 2, 2, 2, 180, 360), [(4, 4), (4, 0)]]],
    "y": [[[(0, 6), (2, 2)], [(4, 6), (1, 0)]]],
}


def faces():
    """Cairo is loaded only after it was told where the faces lie."""
    with tempfile.TemporaryDirectory() as folder:
        conf = os.path.join(folder, "fonts.conf")
        with open(conf, "w", encoding="utf-8") as f:
            f.write("<?xml version='1.0'?><fontconfig><dir>/usr/share/fonts</dir>")
            f.write(f"<dir>{MODULES}/pdfjs-dist/standard_fonts</dir><dir>{MODULES}/@fontsource/alegreya-sans/files</dir>")
            f.write(f"<cachedir>{folder}</cachedir></fontconfig>")
        os.environ["FONTCONFIG_FILE"] = conf
        import cairo

        ctx = cairo.Context(cairo.RecordingSurface(cairo.CONTENT_COLOR, None))
        ctx.set_tolerance(0.2)
        for family, slant, weight in FACES:
            ctx.select_font_face(family, slant, weight)
            ctx.set_font_size(100)
            for char in CHARS:
                ctx.new_path()
                ctx.move_to(0, 0)
                ctx.text_path(char)
                lines = []
                for kind, points in ctx.copy_path_flat():
                    if kind == cairo.PATH_MOVE_TO:
                        lines.append([])
                    if kind in (cairo.PATH_MOVE_TO, cairo.PATH_LINE_TO):
                        lines[-1].append((points[0], -points[1]))
                    elif lines[-1]:
                        lines[-1].append(lines[-1][0])
                yield {"face": f"{family} {slant}{weight}", "char": char, "filled": True, "lines": [line for line in lines if len(line) > 2]}


out = list(faces())
for char, ways in PEN.items():
    out += [{"face": f"pen {k}", "char": char, "filled": False, "lines": lines} for k, lines in enumerate(ways)]
for one in out:
    one["lines"] = [[(round(x, 2), round(y, 2)) for x, y in line] for line in one["lines"]]
json.dump(out, sys.stdout)
