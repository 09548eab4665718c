"""Worked cases of the trade, computed here with ordinary geometry, against the program's JSON answers.

Common practice, no source: the geometry is schoolbook, the situations are those of any corner.
"""

import math
import unittest

from corner import EXACT, INCH, LEVEL_FLOOR, Job, cosine_law, exact, room
from program import NOOKFIT, TOP

PLY = """
[stock.ply]
kind = "plywood"
thickness = "23/32"
sheet = ["48", "96"]
density = "36 lb/ft3"
[stock.rail]
kind = "lumber"
section = ["1 1/4", "3"]
lengths = ["96"]
gravity = 0.42
"""
HEAD = 'title = "case"\nunits = "inch"\ncorner = ["left", "right"]\n' + PLY
BOARD = "baseboard = { height = '5 1/4', thickness = '9/16', starts = '0' }"

DECK = HEAD + """
[[part]]
name = "deck"
stock = "ply"
shape = { size = ["46", "36"] }
place = { at = ["0", "0", "42"], u = "+x", v = "+y" }
group = "deck"
[[group]]
name = "deck"
tight_to = ["left wall"]
height_from = "floor"
[[contact]]
part = "deck"
edge = "bottom"
meets = "left wall"
[[contact]]
part = "deck"
edge = "left"
meets = "right wall"
by = "taper"
"""

PANEL = HEAD + """
[[part]]
name = "panel"
stock = "ply"
shape = {{ size = ["{width}", "{height}"] }}
place = {{ at = ["47", "0", "0"], u = "+y", v = "+z" }}
[[contact]]
part = "panel"
edge = "left"
meets = "left wall"
by = {by}
[[contact]]
part = "panel"
edge = "bottom"
meets = "floor"
"""


def near(got, wanted, within, what):
    if got is None or not abs(got - wanted) <= within:
        raise AssertionError(f"{what}: got {got}, wanted {wanted} within {within}")


def contact(answer, part, meets):
    found = [c for c in answer["contacts"] if c["part"] == part and c["meets"] == meets]
    if len(found) != 1:
        raise AssertionError(f"{part} at {meets}: {len(found)} contacts")
    return found[0]


def exact_square_corner(program):
    job = Job(room(90, extra=LEVEL_FLOOR, board=BOARD), PANEL.format(width=30, height=70, by='["notch"]'))
    answer = job.json(program, "room")
    near(answer["corners"][0]["angle_deg"], 90, 1e-9, "angle")
    fit = job.json(program, "fit")
    for meets in ("left wall", "floor"):
        c = contact(fit, "panel", meets)
        near(c["gap_least_mm"], 0, 0.01, meets + " least gap")
        near(c["gap_most_mm"], 0, 0.01, meets + " greatest gap")
    notch = fit["notches"][0]["polygon_mm"]
    near(max(u for u, v in notch), (9 / 16 + 1 / 8) * INCH, 0.01, "notch width")
    near(max(v for u, v in notch), (5 + 1 / 4 + 1 / 8) * INCH, 0.01, "notch height")
    assert fit["verdict"] == "fits", fit["verdict"]


def law_of_cosines(program):
    for degrees in (90, 91.4, 87.25, 100, 80):
        job = Job(room(degrees, extra=LEVEL_FLOOR))
        answer = job.json(program, "room")
        near(answer["corners"][0]["angle_deg"], degrees, 1e-9, "angle")
        for a, b in ((36, 48), (50, 70), (24, 24)):
            got = job.json(program, "room", "--expect", f"left:{a}", f"right:{b}", "height:8")["expect"]
            near(got["value_mm"], cosine_law(a * INCH, b * INCH, degrees), 1e-6, f"diagonal {a} {b}")


def open_corner(program):
    job = Job(room(91.4, extra=LEVEL_FLOOR), DECK)
    fit = job.json(program, "fit")
    back = contact(fit, "deck", "left wall")
    near(back["gap_most_mm"], 0, 0.02, "tight to the left wall")
    side = contact(fit, "deck", "right wall")
    near(side["gap_least_mm"], 0, 0.05, "tight at the back")
    near(side["gap_most_mm"], 36 * INCH * math.tan(math.radians(1.4)), 0.05, "open in front")
    near(abs(side["taper_deg"]), 1.4, 0.01, "taper")
    assert side["wood_mm"] < 1, "the drawn piece has no wood there"
    near(fit["groups"][0]["turn_deg"], 0, 0.01, "the deck stays on the left wall")


def closed_corner(program):
    fit = Job(room(88.6, extra=LEVEL_FLOOR), DECK).json(program, "fit")
    side = contact(fit, "deck", "right wall")
    near(side["gap_least_mm"], 0, 0.05, "touches in front")
    near(side["gap_most_mm"], 36 * INCH * math.tan(math.radians(1.4)), 0.05, "open at the corner")
    line = side["line_mm"]
    assert line[0][1] > line[-1][1], "the gap is at the corner"
    assert side["wood_mm"] > 0, "the wood is there"


def board_read_as_wall(program):
    def corner(first):
        left = f"""[[wall.plumb]]
at = "24"
line = [["2", {first}], ["48", {{ is = "2 1/4", sd = "{EXACT}" }}], ["90", {{ is = "2 7/16", sd = "{EXACT}" }}]]
"""
        text = room(90, extra=LEVEL_FLOOR, board=BOARD)
        start = text.index("[[wall.plumb]]")
        return text[:start] + left + text[text.index("[[wall]]", start):]

    on = f'{{ is = "1 1/2", on = "baseboard", sd = "{EXACT}" }}'
    answer = Job(corner(on)).json(program, "room")
    left = [w for w in answer["walls"] if w["name"] == "left"][0]
    near(left["lean_mm_per_m"], -3 / 8 / 88 * 1000, 0.05, "lean away")
    status, out, err = Job(corner(f'{{ is = "1 1/2", sd = "{EXACT}" }}')).run(program, "room")
    assert status == 2 and out == "", (status, out)
    assert "room.toml:" in err and "baseboard" in err, err


def leaning_walls(program):
    slope = 0.375 / 96
    top_of_notch = 5.375
    design = PANEL.format(width=30, height=70, by='["notch", "scribe"]')
    away = Job(room(90, extra=LEVEL_FLOOR, board=BOARD, line_lean=(-slope, -slope)), design).json(program, "fit")
    c = contact(away, "panel", "left wall")
    near(c["gap_most_mm"], (70 - top_of_notch) * slope * INCH, 0.1, "top gap, leaning away")
    notch = away["notches"][0]["polygon_mm"]
    near(max(u for u, v in notch), (9 / 16 + top_of_notch * slope + 1 / 8) * INCH, 0.1, "notch, leaning away")
    toward = Job(room(90, extra=LEVEL_FLOOR, board=BOARD, line_lean=(slope, slope)), design).json(program, "fit")
    c = contact(toward, "panel", "left wall")
    near(c["gap_most_mm"], (70 - top_of_notch) * slope * INCH, 0.1, "gap above the board, leaning in")
    notch = toward["notches"][0]["polygon_mm"]
    board_top = 9 / 16 - (70 - 5.25) * slope
    near(max(u for u, v in notch), (board_top + 1 / 8) * INCH, 0.1, "notch, leaning in")


LEDGER = HEAD + """
[[part]]
name = "ledger"
stock = "rail"
shape = {{ length = "46" }}
place = {{ at = ["46", "0", "38"], u = "-x", v = "+z" }}
[[contact]]
part = "ledger"
face = "back"
meets = "left wall"
[[fasten]]
part = "ledger"
face = "back"
to = "left wall"
screw = {{ gauge = 10, length = "3", kind = "wood" }}
per_stud = 2
load = "200 lb"
at = "{at}"
prebored = true
"""


def studs(*centres):
    found = ",\n  ".join(
        f'{{ edges = [{exact((c - 0.75) * INCH)}, {exact((c + 0.75) * INCH)}], height = "39", by = "nail" }}'
        for c in centres
    )
    return f"""wallboard = "1/2"
[wall.studs]
kind = "wood"
width = "1 1/2"
depth = "3 1/2"
gravity = 0.42
found = [{found}]
"""


def put_last(text, block, wall):
    """Tables of a wall stand after its plain keys: puts `block` behind the plumb lines of `wall`."""
    plain, table = block.split("[wall.studs]")
    head = f'name = "{wall}"\n'
    text = text.replace(head, head + plain)
    at = text.index("[[wall.plumb]]", text.index(head))
    return text[:at] + "[wall.studs]" + table + text[at:]


def lever(program):
    base = room(90, extra=LEVEL_FLOOR)
    two = put_last(base, studs(15.3125, 31.375), "left")
    drill = Job(two, LEDGER.format(at="1 1/2")).json(program, "drill")
    wall = [w for w in drill["walls"] if w["name"] == "left"][0]
    centres = sorted({round(h["along_mm"] / INCH) for h in wall["holes"]})
    assert len(wall["holes"]) >= 4, wall["holes"]
    assert all(min(abs(h["along_mm"] / INCH - 15.3125), abs(h["along_mm"] / INCH - 31.375)) < 0.75
               for h in wall["holes"]), centres
    strength = drill["strength"][0]
    assert strength["ratio"] > 2.5, strength
    assert drill["verdict"] == "does not fit"


def hall(program):
    text = room(90, extra=LEVEL_FLOOR + """
[access]
turns = [{ name = "hall", from = "36", to = "38", height = "%s" }]
""")
    stick = HEAD.replace('lengths = ["96"]', 'lengths = ["144"]') + """
[[part]]
name = "stick"
stock = "rail"
shape = { length = "120" }
place = { at = ["0", "0", "0"], u = "+x", v = "+z" }
"""
    low = Job(text % "40", stick).json(program, "carry")
    assert low["pieces"][0]["passes"][0]["verdict"] == "does not fit", low["pieces"]
    high = Job(text % "100", stick).json(program, "carry")
    assert high["pieces"][0]["passes"][0]["verdict"] == "fits", high["pieces"]
    assert "tip" in high["pieces"][0]["passes"][0]["how"], high["pieces"]


ALCOVE = """title = "alcove"
units = "mm"
[flatness]
sd = "0"
[[wall]]
name = "left"
{plumb}
[[wall]]
name = "back"
length = {back}
{plumb}
[[wall]]
name = "right"
{plumb}
[[corner]]
walls = ["left", "back"]
height = "450"
diagonals = [{first}]
[[corner]]
walls = ["back", "right"]
height = "450"
diagonals = [{second}]
[[across]]
walls = ["left", "right"]
out = "300"
height = "450"
is = {across}
"""


def alcove(program):
    back, at_left, at_right = 1200.0, 91.0, 88.5

    def diagonals(degrees):
        return ", ".join(
            f"[{exact(a)}, {exact(b)}, {exact(cosine_law(a, b, degrees))}]" for a, b in ((600, 800), (500, 500))
        )

    # The back wall along x; the side walls lean outward in plan by their angles less 90 degrees.
    def side(degrees, out):
        return out * math.tan(math.radians(degrees - 90))

    plumb = "[[wall.plumb]]\nat = '400'\nline = [" + ", ".join(f'["{h}", {exact(50)}]' for h in (200, 2000)) + "]"
    across = back + side(at_left, 300) + side(at_right, 300)
    text = ALCOVE.format(back=exact(back), first=diagonals(at_left), second=diagonals(at_right), across=exact(across), plumb=plumb)
    room_found = Job(text).json(program, "room")
    angles = {tuple(c["walls"]): c["angle_deg"] for c in room_found["corners"]}
    near(angles[("left", "back")], at_left, 1e-7, "left angle")
    near(angles[("back", "right")], at_right, 1e-7, "right angle")
    length = [w["length_mm"] for w in room_found["walls"] if w["name"] == "back"][0]
    near(length, back, 1e-5, "back wall")
    wrong = text.replace(exact(across), exact(across + 25.4))
    found = Job(wrong).json(program, "room")
    assert found["suspects"] and found["verdict"] == "cannot tell", "an inch too much is noticed"


class WorkedCases(unittest.TestCase):
    """Each case against the answers of the program under test."""

    def test_exact_square_corner(self):
        exact_square_corner(str(TOP / NOOKFIT))

    def test_law_of_cosines(self):
        law_of_cosines(str(TOP / NOOKFIT))

    def test_open_corner(self):
        open_corner(str(TOP / NOOKFIT))

    def test_closed_corner(self):
        closed_corner(str(TOP / NOOKFIT))

    def test_board_read_as_wall(self):
        board_read_as_wall(str(TOP / NOOKFIT))

    def test_leaning_walls(self):
        leaning_walls(str(TOP / NOOKFIT))

    def test_lever(self):
        lever(str(TOP / NOOKFIT))

    def test_hall(self):
        hall(str(TOP / NOOKFIT))

    def test_alcove(self):
        alcove(str(TOP / NOOKFIT))


if __name__ == "__main__":
    unittest.main()
