"""More worked cases of `fit`, by hand: both hands, alcoves, leans, boards that stop, pipes, limits.

Common practice, no source: the geometry is schoolbook, the situations are those of any corner.
"""

import math
import unittest

from corner import INCH, LEVEL_FLOOR, Job, cosine_law, exact, room
from program import NOOKFIT, TOP

PROGRAM = str(TOP / NOOKFIT)
STOCK = """
[stock.ply]
kind = "plywood"
thickness = "{0}"
sheet = ["{1}", "{2}"]
[stock.rail]
kind = "lumber"
section = ["{3}", "{4}"]
lengths = ["{2}"]
"""
INCHES = 'title = "case"\nunits = "inch"\ncorner = ["left", "right"]\n' + STOCK.format(
    "3/4", 48, 96, "1 1/4", 3)
METRIC = 'title = "case"\nunits = "mm"\ncorner = ["left", "back"]\n' + STOCK.format(
    18, 1250, 2500, 28, 75)
PIPE = """
[[wall.obstacle]]
kind = "pipe"
along = ["30", "31 1/4"]
height = ["0", "100"]
out = ["1", "2 1/4"]
"""


def tan(degrees):
    return math.tan(math.radians(degrees))


def part(name, size, place):
    at, u, v = place
    stock = "ply" if isinstance(size, tuple) else "rail"
    shape = f'size = ["{size[0]}", "{size[1]}"]' if stock == "ply" else f'length = "{size}"'
    corner = ", ".join(f'"{x}"' for x in at)
    return (f'\n[[part]]\nname = "{name}"\nstock = "{stock}"\nshape = {{ {shape} }}\n'
            f'place = {{ at = [{corner}], u = "{u}", v = "{v}" }}\n')


def meet(name, edge, meets, **how):
    which = "face" if edge in ("front", "back") else "edge"
    lines = "".join(f"{key} = {value}\n" for key, value in how.items())
    return f'\n[[contact]]\npart = "{name}"\n{which} = "{edge}"\nmeets = "{meets}"\n{lines}'


def group(name, **how):
    lines = "".join(f"{key} = {value}\n" for key, value in how.items())
    return f'\n[[group]]\nname = "{name}"\n{lines}'


def board(**bounds):
    more = "".join(f", {key} = '{value}'" for key, value in bounds.items())
    return f"baseboard = {{ height = '5 1/4', thickness = '9/16'{more} }}"


def with_pipe(text, wall):
    at = text.index("[[wall.plumb]]", text.index(f'name = "{wall}"'))
    return text[:at] + PIPE + text[at:]


def alcove(left, right, lean=0.0, plain=""):
    """A flat alcove 1200 wide at the back, its side walls at these angles to it, leaning in."""
    def diagonals(degrees):
        return ", ".join(f"[{exact(a)}, {exact(b)}, {exact(cosine_law(a, b, degrees))}]"
                         for a, b in ((600, 800), (500, 500)))

    def wall(name, slope):
        plumbs = "\n".join(
            f"[[wall.plumb]]\nat = '{at}'\nline = ["
            + ", ".join(f"['{h}', {exact(60 - slope * h)}]" for h in (250, 900, 2000)) + "]"
            for at in (200, 700))
        length = f"length = {exact(1200)}\nlength_height = '250'\n" if name == "back" else ""
        return f'[[wall]]\nname = "{name}"\n{length}{plain}\n{plumbs}\n'

    def corner(a, b, degrees):
        return (f'[[corner]]\nwalls = ["{a}", "{b}"]\nheight = "250"\n'
                f"diagonals = [{diagonals(degrees)}]\n")

    floor = "[floor]\ndown = [" + ", ".join(
        f"['{w}', '{a}', '{o}', {exact(1000)}]"
        for w, a, o in (("left", 100, 50), ("left", 700, 100), ("back", 600, 60),
                        ("back", 300, 500), ("right", 700, 80))) + "]\n"
    return ('title = "alcove"\nunits = "mm"\n[flatness]\nsd = "0"\n' + wall("left", lean)
            + wall("back", 0) + wall("right", lean) + corner("left", "back", left)
            + corner("back", "right", right) + floor)


class FitCase(unittest.TestCase):
    def fit(self, room_text, design):
        return Job(room_text, design).json(PROGRAM, "fit")

    def contact(self, answer, meets):
        found = [c for c in answer["contacts"] if c["meets"] == meets]
        self.assertEqual(len(found), 1)
        return found[0]

    def near(self, got, wanted, within=0.05):
        self.assertLessEqual(abs(got - wanted), within, f"got {got}, wanted {wanted}")

    def extent(self, notch, axis):
        values = [p[axis] for p in notch["polygon_mm"]]
        return min(values), max(values)


class Corners(FitCase):
    def test_right_hand_deck_in_an_open_corner(self):
        design = (INCHES + part("deck", (40, 30), ((0, 0, 30), "+x", "+y"))
                  + group("deck", tight_to='["right wall"]', height_from='"floor"')
                  + meet("deck", "left", "right wall") + meet("deck", "bottom", "left wall", by='"taper"'))
        answer = self.fit(room(92, extra=LEVEL_FLOOR), design)
        self.near(self.contact(answer, "right wall")["gap_most_mm"], 0)
        self.near(self.contact(answer, "left wall")["gap_most_mm"], 40 * INCH * tan(2))
        self.near(abs(answer["groups"][0]["turn_deg"]), 2, 0.001)

    def test_two_ledgers_each_lie_on_their_own_wall(self):
        design = (INCHES + part("l1", 46, ((46, 0, 30), "-x", "+z"))
                  + part("l2", 30, ((0, 2, 30), "+y", "+z"))
                  + meet("l1", "back", "left wall", by='"shim"')
                  + meet("l2", "back", "right wall", by='"shim"'))
        answer = self.fit(room(93, extra=LEVEL_FLOOR), design)
        turns = {g["name"]: g["turn_deg"] for g in answer["groups"]}
        self.near(turns["l1"], 0, 0.001)
        self.near(turns["l2"], 3, 0.001)
        self.assertLess(max(c["gap_most_mm"] for c in answer["contacts"]), 0.02)

    def test_usual_limits(self):
        deck = (INCHES + part("deck", (46, 36), ((0, 0, 30), "+x", "+y"))
                + group("deck", tight_to='["left wall"]', height_from='"floor"')
                + meet("deck", "bottom", "left wall"))
        for by, limit in (("butt", 1 / 8), ("caulk", 1 / 4), ("trim", 1 / 2)):
            for share, verdict in ((0.95, "fits"), (1.05, "does not fit")):
                degrees = 90 + math.degrees(math.atan(share * limit / 36))
                how = {"by": f'"{by}"', **({"trim": '"3/4"'} if by == "trim" else {})}
                answer = self.fit(room(degrees, extra=LEVEL_FLOOR),
                                  deck + meet("deck", "left", "right wall", **how))
                side = self.contact(answer, "right wall")
                self.near(side["gap_most_mm"], share * limit * INCH)
                self.assertEqual(side["verdict"], verdict, (by, share))

    def test_faces_differ_in_a_skew_corner(self):
        design = (INCHES + part("panel", (24, 60), ((0, 30, 0), "+x", "+z"))
                  + group("panel", parallel_to='"left wall"')
                  + meet("panel", "left", "right wall", by='"scribe"') + meet("panel", "bottom", "floor"))
        lines = self.contact(self.fit(room(87, extra=LEVEL_FLOOR), design), "right wall")["lines"]
        self.near(abs(lines["front"][0][1] - lines["back"][0][1]), 0.75 * INCH * tan(3))
        _, text, _ = Job(room(87, extra=LEVEL_FLOOR), design).run(PROGRAM, "fit")
        self.assertIn("bevel it", text)


class BoardsAndPipes(FitCase):
    def panel(self, room_text):
        design = (INCHES + part("panel", (24, 60), ((47, 0, 0), "+y", "+z"))
                  + meet("panel", "left", "left wall", by='["notch", "scribe"]')
                  + meet("panel", "bottom", "floor"))
        return self.fit(room_text, design)

    def test_wall_on_the_right_leans_in(self):
        slope = 0.5 / 96
        design = (INCHES + part("panel", (24, 60), ((0, 30, 0), "+x", "+z"))
                  + meet("panel", "left", "right wall", by='["notch", "scribe"]')
                  + meet("panel", "bottom", "floor"))
        answer = self.fit(room(90, extra=LEVEL_FLOOR, board=board(), line_lean=(0, slope)), design)
        side = self.contact(answer, "right wall")
        self.near(side["gap_most_mm"], (60 - 5.375) * slope * INCH, 0.1)
        self.near(side["scribe_mm"], side["gap_most_mm"], 1e-9)
        notch = answer["notches"][0]
        self.near(self.extent(notch, 0)[1], (9 / 16 - (60 - 5.25) * slope + 1 / 8) * INCH)
        self.near(self.extent(notch, 1)[1], 5.375 * INCH)

    def test_board_stops_short_of_the_panel_or_within_it(self):
        self.assertEqual(self.panel(room(90, extra=LEVEL_FLOOR, left=board(ends="40")))["notches"], [])
        for bounds in ({"ends": "47 3/8"}, {"starts": "47 3/8"}):
            answer = self.panel(room(90, extra=LEVEL_FLOOR, left=board(**bounds)))
            self.near(self.extent(answer["notches"][0], 0)[1], (9 / 16 + 1 / 8) * INCH)

    def test_shelf_along_a_board_that_stops(self):
        shelf = (INCHES + part("shelf", (46, 10), ((1, 0, 2), "+x", "+y"))
                 + group("shelf", height_from='"floor"')
                 + meet("shelf", "bottom", "left wall", by='["notch", "scribe"]'))
        ends = self.fit(room(90, extra=LEVEL_FLOOR, left=board(ends="30")), shelf)
        self.near(self.extent(ends["notches"][0], 0)[1], (29 + 1 / 8) * INCH)
        self.near(self.extent(ends["notches"][0], 1)[1], (9 / 16 + 1 / 8) * INCH)
        self.near(self.contact(ends, "left wall")["gap_least_mm"], 0)
        starts = self.fit(room(90, extra=LEVEL_FLOOR, left=board(starts="30")), shelf)
        self.near(self.extent(starts["notches"][0], 0)[0], (29 - 1 / 8) * INCH)

    def test_rail_an_inch_off_the_wall_clears_the_board(self):
        rail = INCHES + part("rail", 60, ((20, 1, 0), "+z", "+x"))
        for wanted, verdict in (("3/8", "fits"), ("1/2", "does not fit")):
            answer = self.fit(room(90, extra=LEVEL_FLOOR, left=board()),
                              rail + meet("rail", "back", "left wall", by='"clear"', gap=f"'{wanted}'"))
            clear = [c for c in answer["clearances"] if c["needed_mm"] > 0]
            self.near(clear[0]["least_mm"], 7 / 16 * INCH)
            self.assertEqual(clear[0]["verdict"], verdict)
            self.assertEqual(answer["verdict"], verdict)

    def deck_at_pipe(self, by):
        return (INCHES + part("deck", (46, 36), ((0, 0, 30), "+x", "+y"))
                + group("deck", tight_to='["left wall"]', height_from='"floor"')
                + meet("deck", "bottom", "left wall", by=by))

    def test_deck_is_notched_round_a_pipe_that_stands_off_the_wall(self):
        answer = self.fit(with_pipe(room(90, extra=LEVEL_FLOOR), "left"), self.deck_at_pipe('["notch"]'))
        notch = answer["notches"][0]
        self.near(self.extent(notch, 0)[0], (30 - 1 / 8) * INCH)
        self.near(self.extent(notch, 0)[1], (31.25 + 1 / 8) * INCH)
        self.near(self.extent(notch, 1)[0], 0)
        self.near(self.extent(notch, 1)[1], (2.25 + 1 / 8) * INCH)
        self.assertEqual(answer["clashes"], [])
        self.near(self.contact(answer, "left wall")["gap_most_mm"], 0)

    def test_without_a_notch_the_pipe_stops_the_deck(self):
        answer = self.fit(with_pipe(room(90, extra=LEVEL_FLOOR), "left"), self.deck_at_pipe('"butt"'))
        self.near(self.contact(answer, "left wall")["gap_most_mm"], 2.25 * INCH)
        self.assertEqual(answer["verdict"], "does not fit")

    def test_strip_behind_a_pipe_needs_no_notch(self):
        strip = (INCHES + part("strip", (46, "3/4"), ((0, 0, 30), "+x", "+y"))
                 + group("strip", tight_to='["left wall"]', height_from='"floor"')
                 + meet("strip", "bottom", "left wall", by='["notch"]'))
        answer = self.fit(with_pipe(room(90, extra=LEVEL_FLOOR), "left"), strip)
        self.assertEqual((answer["notches"], answer["clashes"]), ([], []))


class Alcoves(FitCase):
    def shelf(self, width, aside):
        return (METRIC + part("shelf", (width, 300), ((300, aside, 900), "+y", "-x"))
                + group("shelf", tight_to='["back wall"]', height_from='"floor"')
                + meet("shelf", "top", "back wall") + meet("shelf", "left", "left wall", by='"caulk"')
                + meet("shelf", "right", "right wall", by='"caulk"'))

    def front(self, width, aside, by, **how):
        return (METRIC + part("front", (width, 420), ((430, aside, 0), "+y", "+z"))
                + meet("front", "left", "left wall", by=by, **how)
                + meet("front", "right", "right wall", by=by, **how)
                + meet("front", "bottom", "floor", by='"shim"'))

    def test_alcove_opens_in_front(self):
        answer = self.fit(alcove(91, 90.5), self.shelf(1190, 5))
        left, right = self.contact(answer, "left wall"), self.contact(answer, "right wall")
        whole = 1200 + 300 * (tan(1) + tan(0.5)) - 1190
        self.near(left["gap_most_mm"], whole / 2)
        self.near(right["gap_most_mm"], whole / 2)
        self.near(left["gap_most_mm"] - left["gap_least_mm"], 300 * tan(1))
        self.near(right["gap_most_mm"] - right["gap_least_mm"], 300 * tan(0.5))

    def test_alcove_closes_in_front(self):
        answer = self.fit(alcove(89, 89.5), self.shelf(1200, 0))
        half = 300 * (tan(1) + tan(0.5)) / 2
        clashes = {c["with"]: c["depth_mm"] for c in answer["clashes"]}
        self.assertEqual(sorted(clashes), ["left wall", "right wall"], "it stays home at the back")
        for depth in clashes.values():
            self.near(depth, half)
        self.assertEqual(answer["verdict"], "does not fit")

    def test_a_panel_cannot_be_scribed_to_both_cheeks_of_a_wider_alcove(self):
        answer = self.fit(alcove(90, 90), self.front(1190, 5, '"scribe"'))
        for wall in ("left wall", "right wall"):
            side = self.contact(answer, wall)
            self.near(side["gap_most_mm"], 5)
            self.assertEqual(side["verdict"], "does not fit")

    def test_a_panel_too_long_is_cut_back_at_both_ends(self):
        answer = self.fit(alcove(90, 90), self.front(1204, -2, '"scribe"'))
        for wall in ("left wall", "right wall"):
            self.near(self.contact(answer, wall)["gap_least_mm"], -2)
        self.assertEqual(answer["verdict"], "fits")

    def test_cheeks_that_lean_in_pinch_the_top(self):
        answer = self.fit(alcove(90, 90, lean=0.005), self.front(1200, 0, '"butt"'))
        for wall in ("left wall", "right wall"):
            self.near(self.contact(answer, wall)["gap_least_mm"], -0.005 * (420 - 250))
        self.assertEqual(answer["verdict"], "does not fit")

    def test_profile_notch_follows_the_molding(self):
        molded = ("baseboard = { height = '180', thickness = '22', profile = [['0','22'], "
                  "['130','22'], ['150','18'], ['165','12'], ['180','9']] }")
        answer = self.fit(alcove(90, 90, plain=molded), self.front(
            1200, 0, '["notch", "scribe"]', notch='"profile"', clearance="'2'"))
        self.assertEqual(len(answer["notches"]), 2)
        notch = [n for n in answer["notches"] if n["for"].startswith("left")][0]
        self.near(self.extent(notch, 0)[1], 24)
        self.near(self.extent(notch, 1)[1], 182)
        self.near(max(u for u, v in notch["polygon_mm"] if v > 179), 11, 0.5)


if __name__ == "__main__":
    unittest.main()
