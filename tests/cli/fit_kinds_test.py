"""Cases of `fit` of the kind where a naive program goes wrong, each worked out by hand in its comment.

Common practice, no source: the geometry is schoolbook, the situations are those of any corner.
"""

import math
import pathlib
import tempfile
import unittest

from corner import INCH, LEVEL_FLOOR, Job, exact, room
from fit_cases_test import (INCHES, METRIC, PROGRAM, FitCase, alcove, board, group, meet, part, tan)


def sin(degrees):
    return math.sin(math.radians(degrees))


def sloping_floor(fall, covering=""):
    """A floor that falls by `fall` inches in 70 along the left wall, away from the corner."""
    spots = (("left", 6, 4, 6), ("left", 70, 30, 70), ("left", 30, 60, 30), ("right", 70, 6, 6),
             ("left", 90, 10, 90))
    return "\n".join(["[floor]", "down = ["] + [
        f"  ['{wall}', '{along}', '{out}', {exact((40 + fall * x / 70) * INCH)}],"
        for wall, along, out, x in spots] + ["]", covering])


def with_obstacle(text, kind, along, height, out, wall="left"):
    """An obstacle before the plumb lines of a wall."""
    block = (f'\n[[wall.obstacle]]\nkind = "{kind}"\nalong = ["{along[0]}", "{along[1]}"]\n'
             f'height = ["{height[0]}", "{height[1]}"]\nout = "{out}"\n')
    at = text.index("[[wall.plumb]]", text.index(f'name = "{wall}"'))
    return text[:at] + block + text[at:]


CARPET = 'covering = { kind = "carpet", thickness = "5/8" }\n'
STOOD_ON = 'squash = [{ load = "180 lb", on = ["3", "1 1/4"], by = "3/8" }]\n'


class KindCase(FitCase):
    def text(self, room_text, design, command="fit"):
        """The answer's text in one line."""
        return " ".join(Job(room_text, design).run(PROGRAM, command)[1].split())

    def deep(self, notch):
        return self.extent(notch, 0)[1] - self.extent(notch, 0)[0]

    def high(self, notch):
        return self.extent(notch, 1)[1] - self.extent(notch, 1)[0]

    def corner_panel(self, height=60, by='["notch", "scribe"]', width=24, x=47, **how):
        return (INCHES + part("panel", (width, height), ((x, 0, 0), "+y", "+z"))
                + meet("panel", "left", "left wall", by=by, **how) + meet("panel", "bottom", "floor"))


class Wedges(KindCase):
    def test_closed_corner_with_the_right_wall_as_main_wall(self):
        # 88.6 degrees, a deck 46 x 36 tight to the right wall by its 36 side. Its 46 edge runs square
        # to that wall and so into the left one: it touches at the far end and is open 46 tan 1.4 at
        # the corner. The deck moves out by 46 sin 1.4, so the wood for the taper is there.
        # Naive: the wedge at the far end, or "no wood".
        design = (INCHES + part("deck", (46, 36), ((0, 0, 30), "+x", "+y"))
                  + group("deck", tight_to='["right wall"]', height_from='"floor"')
                  + meet("deck", "left", "right wall") + meet("deck", "bottom", "left wall", by='"taper"'))
        answer = self.fit(room(88.6, extra=LEVEL_FLOOR), design)
        side = self.contact(answer, "left wall")
        self.near(self.contact(answer, "right wall")["gap_most_mm"], 0)
        self.near(side["gap_least_mm"], 0)
        self.near(side["gap_most_mm"], 46 * INCH * tan(1.4))
        self.assertGreater(side["line_mm"][0][1], side["line_mm"][-1][1], "open at the corner")
        self.near(side["wood_mm"], 46 * INCH * sin(1.4), 0.1)
        self.assertEqual(side["verdict"], "fits")

    def test_open_corner_with_the_right_wall_as_main_wall(self):
        # The same at 91.4: open 46 tan 1.4 at the far end, and no wood for it: rip 36 + 1 1/8.
        design = (INCHES + part("deck", (46, 36), ((0, 0, 30), "+x", "+y"))
                  + group("deck", tight_to='["right wall"]', height_from='"floor"')
                  + meet("deck", "left", "right wall") + meet("deck", "bottom", "left wall", by='"taper"'))
        opened = room(91.4, extra=LEVEL_FLOOR)
        side = self.contact(self.fit(opened, design), "left wall")
        self.assertLess(side["line_mm"][0][1], side["line_mm"][-1][1], "open in front")
        self.near(side["wood_mm"], 0, 0.1)
        self.assertIn('rip the blank 37 1/8" and leave the edge wild', self.text(opened, design))

    def test_a_hollow_like_an_arc(self):
        # A wall hollow by 1/4 in the middle of 48, as an arc: a ledger 46 long from 1 to 47 touches
        # at both ends. The string reads x = 24 deeper by 1/4; at 1 and 47 the arc is
        # 1/4 (1 - (23/24)^2) = .0204 deep, so the shim in the middle is .25 - .0204 = .2296.
        # Naive: touching in the middle, or a mean line and half of it.
        def arc(x):
            return 0.25 * (1 - ((x - 24) / 24) ** 2) if 0 < x < 48 else 0.0
        line = ", ".join(f'["{x}", {{ is = "{2 + arc(x):.4f}", sd = "0.3 mm" }}]' for x in range(4, 73, 4))
        strings = "".join(f'\n[[wall.string]]\nheight = "{h}"\nline = [{line}]\n' for h in (30, 36, 42))
        text = room(90, extra=LEVEL_FLOOR).replace('[flatness]\nsd = "0"', '[flatness]\nsd = "4 mm"')
        text = text.replace('[[wall]]\nname = "right"', strings + '[[wall]]\nname = "right"')
        design = (INCHES + part("ledger", 46, ((47, 0, 34), "-x", "+z"))
                  + meet("ledger", "back", "left wall", by='"shim"'))
        side = self.contact(self.fit(text, design), "left wall")
        self.near(side["gap_least_mm"], 0)
        self.near(side["gap_most_mm"], 0.2296 * INCH, 0.6)
        middle = max(side["field_mm"], key=lambda p: p[2])
        self.near(middle[0], 23 * INCH, 60)

    def test_square_distance_of_a_panel_askew(self):
        # A panel at 45 degrees to the left wall, its left end at (40, 8): along the panel the wall is
        # 8 / sin 45 = 11.31 away, square to it 8. Naive: one number for both.
        design = (INCHES + part("panel", (20, 40), ((40, 8, 10), "+x", "+z")).replace(
            'u = "+x", v = "+z"', 'u = "+x", v = "+y", lean = "0", turn = "45"')
                  + group("panel", turn="false", height_from='"floor"')
                  + meet("panel", "left", "left wall", by='"clear"', gap='"1"'))
        side = self.contact(self.fit(room(90, extra=LEVEL_FLOOR), design), "left wall")
        # The left edge runs from (40, 8) to (40 - 40 sin 45, 8 + 40 cos 45): its near end counts.
        self.near(side["gap_least_mm"], 8 / sin(45) * INCH)
        self.near(side["square_mm"], 8 * INCH)


class Notches(KindCase):
    def test_a_rail_above_and_a_board_below_on_a_wall_that_leans(self):
        # Leaning in 3/8 in 96, a panel 70 tall touches at its top. The board 9/16 comes over the edge
        # by 9/16 - 64.75 x .375/96 = .3096 at its top; a rail 3/4 out at 40 to 43 by
        # 3/4 - 27 x .375/96 = .6445 at its top. Leaning away it touches on the board notch at 5 3/8:
        # the rail comes over by 3/4 - 34.625 x .375/96 = .6147 at its bottom.
        # Naive: 9/16 and 3/4 both times, or the mean of top and bottom.
        slope = 0.375 / 96
        for lean, rail, base in ((slope, .6445, .3096), (-slope, .6147, .5625 + 5.375 * slope)):
            text = with_obstacle(room(90, extra=LEVEL_FLOOR, left=board(), line_lean=(lean, 0)),
                                 "other", (10, 100), (40, 43), "3/4")
            found = {n["for"]: n for n in self.fit(text, self.corner_panel(70))["notches"]}
            self.near(self.deep(found["left wall other"]), (rail + 1 / 8) * INCH, 0.1)
            self.near(self.deep(found["left wall baseboard"]), (base + 1 / 8) * INCH, 0.1)

    def test_a_shoe_that_is_deeper_than_its_board(self):
        # Board 3/8, shoe 3/4 out of it: 1 1/8 at the floor, and a square notch takes that and 1/8 all
        # the way up. Naive: 3/8, or 3/4.
        shoe = "baseboard = { height = '5 1/4', thickness = '3/8', shoe = '3/4' }"
        notches = self.fit(room(90, extra=LEVEL_FLOOR, left=shoe), self.corner_panel())["notches"]
        self.assertEqual(len(notches), 1)
        self.near(self.deep(notches[0]), (3 / 8 + 3 / 4 + 1 / 8) * INCH)
        self.near(self.high(notches[0]), 5.375 * INCH)

    def test_a_board_that_stops_at_a_casing(self):
        # The board stops at 44, a casing 3/4 out runs from 44 to 48 and up past the panel's top: all
        # of the edge lies against the casing. A notch would take the whole edge, so none is cut: the
        # panel is pushed against the casing, 3/4 out. Naive: a notch 70 high, or "cannot meet".
        text = with_obstacle(room(90, extra=LEVEL_FLOOR, left=board(ends=44)), "casing", (44, 48),
                             (0, 80), "3/4")
        answer = self.fit(text, self.corner_panel())
        self.assertEqual(answer["notches"], [])
        self.near(self.contact(answer, "left wall")["gap_most_mm"], 0)
        self.near(answer["groups"][0]["y_mm"], 0.75 * INCH)
        self.assertEqual(answer["verdict"], "fits")

    def test_a_casing_lower_than_the_panel_is_notched(self):
        # The same casing, 30 high: the panel stands on the wall above it, notched 7/8 by 30 1/8.
        text = with_obstacle(room(90, extra=LEVEL_FLOOR, left=board(ends=44)), "casing", (44, 48),
                             (0, 30), "3/4")
        answer = self.fit(text, self.corner_panel())
        self.assertEqual(len(answer["notches"]), 1)
        self.near(self.deep(answer["notches"][0]), 7 / 8 * INCH)
        self.near(self.high(answer["notches"][0]), 30.125 * INCH, 5)

    def test_warned_where_little_wood_is_left_above(self):
        # A panel 6 tall over a board of 5 1/4: 6 - 5 3/8 = 5/8 of wood is left above the notch, less
        # than 3/4. One 6 1/2 tall keeps 1 1/8.
        for height, warned in ((6, True), ("6 1/2", False)):
            design = self.corner_panel(height)
            text = room(90, extra=LEVEL_FLOOR, left=board())
            notch = self.fit(text, design)["notches"][0]
            self.assertEqual(notch["warnings"] != [], warned, height)
            if warned:
                self.assertIn('leaves less than 3/4" of wood above it', self.text(text, design))
                self.assertIn('of wood above it', self.text(text, design, "check"))

    def test_warned_where_a_toe_is_left_beside_the_notch(self):
        # A deck whose edge meets a box on the wall from 30 to 45 3/4; the deck ends at 46 1/2: with
        # the clearance a toe of 46 1/2 - 45 7/8 = 5/8 is left at its corner.
        design = (INCHES + part("deck", ("46 1/2", 36), ((0, 0, 30), "+x", "+y"))
                  + group("deck", tight_to='["left wall"]', height_from='"floor"')
                  + meet("deck", "bottom", "left wall", by='["notch", "scribe"]'))
        for end, warned in (("45 3/4", True), (45, False)):
            text = with_obstacle(room(90, extra=LEVEL_FLOOR), "heater", (30, end), (20, 40), "2")
            warnings = self.fit(text, design)["notches"][0]["warnings"]
            self.assertEqual(any("right of it" in w for w in warnings), warned, warnings)

    def test_warned_where_two_notches_leave_a_neck(self):
        # The board's notch ends at 5 3/8; an outlet from 6 1/8 is notched from 6: 5/8 between.
        text = with_obstacle(room(90, extra=LEVEL_FLOOR, left=board()), "outlet", (40, 50),
                             ("6 1/8", 10), "1")
        notches = self.fit(text, self.corner_panel())["notches"]
        self.assertEqual(len(notches), 2)
        for notch in notches:
            wanted = "above it" if notch["for"].endswith("baseboard") else "below it"
            self.assertTrue(any(wanted in w for w in notch["warnings"]), notch["warnings"])

    def test_warned_where_the_piece_is_cut_in_two(self):
        # A shelf 4 deep past a heater that stands 4 1/4 out: nothing is left in front of it. At 3 out
        # 7/8 is left, at 3 1/4 only 5/8.
        design = (INCHES + part("shelf", (46, 4), ((0, 0, 30), "+x", "+y"))
                  + group("shelf", height_from='"floor"')
                  + meet("shelf", "bottom", "left wall", by='["notch", "scribe"]'))
        for out, words in (("4 1/4", "cuts the piece in two"), ("3", ""),
                           ("3 1/4", 'leaves less than 3/4" of wood above it')):
            text = with_obstacle(room(90, extra=LEVEL_FLOOR), "heater", (20, 30), (20, 40), out)
            warnings = self.fit(text, design)["notches"][0]["warnings"]
            self.assertEqual(warnings, [words] if words else [], out)

    def test_warned_where_a_notch_reaches_a_cutout(self):
        # A hole from 1/2 to 3 in, beside the board's notch of 11/16: it runs into the hole; a hole
        # from 1 in is 5/16 away; one from 2 in is far enough.
        for left, words in (("1/2", "runs into the porthole"),
                            ("1", 'comes within 3/4" of the porthole'), ("2", "")):
            design = self.corner_panel().replace(
                'shape = {', f'cutouts = [{{ name = "porthole", rect = ["{left}", "1", "2", "3"] }}]\n'
                'shape = {', 1)
            warnings = self.fit(room(90, extra=LEVEL_FLOOR, left=board()), design)["notches"][0]["warnings"]
            self.assertEqual(words in " ".join(warnings) if words else warnings, True if words else [])

    def test_a_profile_notch_is_told_as_one(self):
        # A board 180 high, 22 thick to 130, then 18 at 150, 12 at 165, 9 at its top; clearance 2.
        # At 100 up the notch is 24 deep; at its top, 182, it is 9 + 2.
        molded = ("baseboard = { height = '180', thickness = '22', profile = [['0','22'], "
                  "['130','22'], ['150','18'], ['165','12'], ['180','9']] }")
        text = alcove(90, 90, plain=molded)
        design = (METRIC + part("front", (1000, 420), ((430, 0, 0), "+y", "+z"))
                  + meet("front", "left", "left wall", by='["notch", "scribe"]', notch='"profile"',
                         clearance="'2'")
                  + meet("front", "bottom", "floor", by='"shim"'))
        notch = self.fit(text, design)["notches"][0]
        self.assertTrue(notch["profile"])
        steps = notch["steps_mm"]
        self.assertEqual(steps, sorted(steps))
        self.near(steps[0][1], 24, 0.9)
        self.near(steps[-1][0], 182, 0.5)
        self.near(steps[-2][1], 11, 0.9)
        for at, wanted in ((1, 22), (129, 22), (150, 18), (165, 12)):
            a = max(s for s in steps if s[0] <= at)
            b = min(s for s in steps if s[0] > at)
            deep = a[1] + (b[1] - a[1]) * (at - a[0]) / (b[0] - a[0])
            self.assertGreaterEqual(deep, wanted + 2, "never short of the molding")
        words = self.text(text, design)
        self.assertIn("it follows the profile: 25 mm deep at 0 mm up, 25 mm deep at 130 mm up", words)
        self.assertIn("'nookfit cut -o FOLDER' draws it full size", words)
        cut = self.text(text, design, "cut")
        self.assertIn("following its profile", cut)

    def test_no_needless_points_in_a_notch(self):
        # Every point of a polygon bends its outline by more than half the grid of .001 mm.
        molded = ("baseboard = { height = '180', thickness = '22', profile = [['0','22'], "
                  "['130','22'], ['150','18'], ['165','12'], ['180','9']] }")
        design = (METRIC + part("front", (1000, 420), ((430, 0, 0), "+y", "+z"))
                  + meet("front", "left", "left wall", by='["notch", "scribe"]', notch='"profile"',
                         clearance="'2'")
                  + meet("front", "bottom", "floor", by='"shim"'))
        ring = self.fit(alcove(90, 90, plain=molded), design)["notches"][0]["polygon_mm"]
        for k, (u, v) in enumerate(ring):
            (au, av), (bu, bv) = ring[k - 1], ring[(k + 1) % len(ring)]
            length = math.hypot(bu - au, bv - av)
            off = abs((bu - au) * (v - av) - (bv - av) * (u - au)) / length
            self.assertGreater(off, 0.0004, (k, ring))
        self.assertLess(len(ring), 24)


class Alcoves(KindCase):
    def shelf(self, width, aside, by):
        return (METRIC + part("shelf", (width, 300), ((300, aside, 900), "+y", "-x"))
                + group("shelf", tight_to='["back wall"]', height_from='"floor"')
                + meet("shelf", "top", "back wall") + meet("shelf", "left", "left wall", by=by)
                + meet("shelf", "right", "right wall", by=by))

    def test_a_shelf_short_of_both_walls_is_short_of_both_gaps(self):
        # 1175 in an alcove of 1200, wherever it is drawn: 12.5 open on either side, and a blank of
        # 1200, not 1187.5. Naive: "the wood is there", because the shelf moved.
        for aside in (12.5, 0, 25):
            for by in ('"scribe"', '"taper"', '"butt"'):
                answer = self.fit(alcove(90, 90), self.shelf(1175, aside, by))
                for wall in ("left wall", "right wall"):
                    self.near(self.contact(answer, wall)["gap_most_mm"], 12.5)
                    self.near(self.contact(answer, wall)["wood_mm"], 0)
                    self.assertEqual(self.contact(answer, wall)["verdict"], "does not fit")
                words = self.text(alcove(90, 90), self.shelf(1175, aside, by))
                self.assertIn("rip the blank 1200 mm and leave both edges wild", words)
                self.assertNotIn("taper 0", words)
                self.assertNotIn("or taper", words)
                if by == '"scribe"':
                    cut = self.text(alcove(90, 90), self.shelf(1175, aside, by), "cut")
                    self.assertIn("finished 1200 mm x 300 mm", cut)

    def test_an_alcove_narrower_in_front_has_the_wood(self):
        # 1200 at the back, cheeks at 89 and 89.5: a shelf of 1200 overlaps by 300 tan 1 and
        # 300 tan .5 in front, half of the sum each once it is pushed home; tapers take that off, the
        # blank stays 1200. Naive: open in front.
        half = 300 * (tan(1) + tan(0.5)) / 2
        text, design = alcove(89, 89.5), self.shelf(1200, 0, '"taper"')
        answer = self.fit(text, design)
        for wall in ("left wall", "right wall"):
            self.near(self.contact(answer, wall)["gap_least_mm"], -half)
        self.assertNotIn("rip the blank", self.text(text, design))
        self.assertEqual(answer["clashes"], [])

    def test_a_butt_that_is_open_alike_is_not_tapered(self):
        # 1/2 open all along between two butts: trim, filler or a larger piece, no taper.
        design = (INCHES + part("deck", (46, 36), ((0, 0, 30), "+x", "+y"))
                  + group("deck", tight_to='["left wall"]', height_from='"floor"', turn="false")
                  + meet("deck", "bottom", "left wall"))
        self.assertNotIn("taper", self.text(room(90, extra=LEVEL_FLOOR), design))
        self.assertIn("FITS", self.text(room(90, extra=LEVEL_FLOOR), design))


class Standing(KindCase):
    def test_sloping_floor_under_a_standing_panel(self):
        # The floor falls .7 in 70, 1 in 100: a panel 24 wide from 40 to 64 stands on its left end,
        # .40 lower than drawn, and is open .24 at the other: shim. Naive: open .40, or at both ends.
        design = (INCHES + part("panel", (24, 60), ((40, 30, 0), "+x", "+z"))
                  + meet("panel", "bottom", "floor", by='"shim"'))
        answer = self.fit(room(90, extra=sloping_floor(0.7)), design)
        foot = self.contact(answer, "floor")
        self.near(answer["groups"][0]["z_mm"], -0.40 * INCH, 0.2)
        self.near(foot["gap_least_mm"], 0)
        self.near(foot["gap_most_mm"], 0.24 * INCH, 0.1)
        self.near(foot["line_mm"][-1][1], foot["gap_most_mm"], 1e-6)
        self.near(answer["floor"][0]["shim_mm"], 0.24 * INCH, 0.1)

    def test_a_plumb_panel_on_a_steep_floor_does_not_lean(self):
        # 3 in 100 is 1.7 degrees of floor, none of the panel: a shim or a taper, no foot of a leg.
        design = (INCHES + part("panel", (24, 60), ((40, 30, 0), "+x", "+z"))
                  + meet("panel", "bottom", "floor", by='"taper"'))
        text = room(90, extra=sloping_floor(2.1))
        self.assertEqual(self.fit(text, design)["floor"][0]["foot_mm"], 0)
        self.assertNotIn("leans", self.text(text, design))
        self.near(self.contact(self.fit(text, design), "floor")["taper_deg"], math.degrees(math.atan(.03)), .01)

    def test_a_ceiling_nobody_measured_is_nowhere(self):
        # Naive: 12 clear, because no ray found it.
        design = (INCHES + part("panel", (24, 95), ((40, 30, 0), "+x", "+z"))
                  + meet("panel", "bottom", "floor") + meet("panel", "top", "ceiling", by='"clear"', gap='"1/2"'))
        answer = self.fit(room(90, extra=LEVEL_FLOOR), design)
        self.assertEqual(answer["verdict"], "cannot tell")
        self.assertEqual([c for c in answer["clearances"] if c["from"] == "ceiling"], [])
        # 40 under the level line the floor, 56 over it the ceiling: 96 less 95.
        read = "\n[ceiling]\nup = [" + ", ".join(
            f"['{w}', '{a}', '{o}', {exact(56 * INCH)}]" for w, a, o in
            (("left", 6, 4), ("left", 70, 30), ("right", 70, 6))) + "]\n"
        top = self.contact(self.fit(room(90, extra=LEVEL_FLOOR + read), design), "ceiling")
        self.near(top["gap_least_mm"], INCH)
        self.assertEqual(top["verdict"], "fits")

    def test_trim_narrower_than_a_quarter_covers_nothing(self):
        # Its width less 1/4 would be -1/16; it is 0, and a gap of nothing fits.
        deck = (INCHES + part("deck", (46, 36), ((0, 0, 30), "+x", "+y"))
                + group("deck", tight_to='["left wall"]', height_from='"floor"')
                + meet("deck", "bottom", "left wall")
                + meet("deck", "left", "right wall", by='"trim"', trim="'3/16'"))
        side = self.contact(self.fit(room(90, extra=LEVEL_FLOOR), deck), "right wall")
        self.assertEqual(side["allow_mm"], 0)

    def test_ladder_close_to_the_wall_clears_the_board_not_the_shoe(self):
        # 3/4 off the wall: a 9/16 board leaves 3/16; with a 3/4 shoe out of it, 1 5/16 in all, the
        # rail runs into it by 9/16. Naive: the board's 9/16 both times.
        rail = (INCHES + part("rail", 60, ((20, "3/4", 0), "+z", "+x"))
                + meet("rail", "back", "left wall", by='"clear"', gap="'1/8'"))
        clear = self.fit(room(90, extra=LEVEL_FLOOR, left=board()), rail)
        self.near([c for c in clear["clearances"] if c["needed_mm"] > 0][0]["least_mm"], 3 / 16 * INCH)
        self.assertEqual(clear["verdict"], "fits")
        shod = self.fit(room(90, extra=LEVEL_FLOOR, left=board(shoe="3/4")), rail)
        self.near(shod["clashes"][0]["depth_mm"], 9 / 16 * INCH)
        self.assertEqual(shod["verdict"], "does not fit")

    def ladder(self, degrees, contacts=""):
        rails = "".join(part(f"rail {k}", 60, ((x, 20, 0), "+z", "-y")) for k, x in (("a", 20), ("b", 36)))
        rails = rails.replace('v = "-y" }', f'v = "-y", turn = "{degrees}" }}\ngroup = "ladder"')
        feet = "".join(f'\n[[feet]]\npart = "rail {k}"\nload = "180 lb"\n' for k in "ab")
        return INCHES + rails + contacts + feet

    def test_a_ladder_at_a_slope(self):
        # Rails 3 wide leaning 15 degrees: the foot is cut 15 degrees off square, 3 tan 15 = .804 from
        # corner to corner. Its lower corner hangs 3 sin 15 = .776 under the drawn place (turned one
        # way), so it comes up by that much; turned the other way it stands where it is drawn.
        for degrees, rise in ((15, 3 * sin(15)), (-15, 0)):
            answer = self.fit(room(90, extra=LEVEL_FLOOR), self.ladder(degrees))
            self.near(answer["groups"][0]["z_mm"], rise * INCH)
            self.assertEqual(len(answer["floor"]), 2)
            for foot in answer["floor"]:
                self.near(foot["foot_deg"], 15, 1e-6)
                self.near(foot["foot_mm"], 3 * tan(15) * INCH)
                self.near(foot["shim_mm"], 0)
        words = self.text(room(90, extra=LEVEL_FLOOR), self.ladder(15))
        self.assertIn('cut its foot 15.0 degrees across its face off square, 13/16" from corner to corner',
                      words)

    def test_a_ladder_at_a_slope_on_a_sloping_floor(self):
        # The floor falls 1 in 100 along x: rail a (from 20) is on the higher floor and stands, rail b
        # (16 further) is open 16 / 100 = .16. Each is 1 1/4 thick: .0125 more under its far face.
        text = room(90, extra=sloping_floor(0.7))
        answer = self.fit(text, self.ladder(-15))
        shims = {f["part"]: f["shim_mm"] for f in answer["floor"]}
        self.near(shims["rail a"], 0.0125 * INCH)
        self.near(shims["rail b"], 0.1725 * INCH, 0.1)
        self.assertIn('rail b: shim up to 3/16" under it', self.text(text, self.ladder(-15)))

    def test_a_ladder_at_a_slope_on_carpet(self):
        # The level cut of a rail 3 x 1 1/4 at 15 degrees is 3 / cos 15 long: 1.035 times the block
        # that was stood on with the same load, so it sinks as tested, 3/8.
        answer = self.fit(room(90, extra=LEVEL_FLOOR + "\n" + CARPET + STOOD_ON), self.ladder(-15))
        for foot in answer["floor"]:
            self.near(foot["squash_mm"], 3 / 8 * INCH)

    def test_a_foot_that_leans_is_cut_not_shimmed(self):
        meets = meet("rail a", "left", "floor", by='"shim"') + meet("rail b", "left", "floor")
        words = self.text(room(90, extra=LEVEL_FLOOR), self.ladder(-15, meets))
        self.assertEqual(words.count('cut this end to the floor, 13/16" over the edge'), 2, words)


class Carpets(KindCase):
    def deck_and_panel(self, feet=""):
        return (INCHES + part("deck", (46, 30), ((0, 0, 41), "+x", "+y"))
                + part("panel", (36, 60), ((46, 0, 0), "+y", "+z"))
                + meet("deck", "bottom", "left wall") + meet("panel", "back", "deck") + feet)

    def test_a_hung_deck_and_a_standing_panel(self):
        # Only the carpet's thickness is known: a panel beside a deck that hangs on the wall may
        # settle by anything up to 5/8. Stood on: as far as that went, or further, never more.
        # Naive: half of it, as one number, or nothing at all.
        text = room(90, extra=LEVEL_FLOOR + "\n" + CARPET)
        answer = self.fit(text, self.deck_and_panel())
        panel = [f for f in answer["floor"] if f["part"] == "panel"][0]
        self.near(panel["settles_mm"], 5 / 8 * INCH)
        self.assertEqual(panel["squash_mm"], 0)
        words = self.text(text, self.deck_and_panel())
        self.assertIn('panel: may settle by up to 5/8" into the carpet. It settles and the deck on the wall '
                      'does not', words)
        bare = self.fit(room(90, extra=LEVEL_FLOOR), self.deck_and_panel())
        self.assertEqual([f["settles_mm"] for f in bare["floor"]], [0])

    def test_a_foot_without_a_load_is_a_range(self):
        feet = '\n[[feet]]\npart = "panel"\n'
        for stood, likely in (("", 5 / 16), (STOOD_ON, 3 / 8)):
            text = room(90, extra=LEVEL_FLOOR + "\n" + CARPET + stood)
            panel = self.fit(text, self.deck_and_panel(feet))["floor"][0]
            self.near(panel["squash_mm"], likely * INCH)
            self.near(panel["squash_least_mm"], 0)
            self.near(panel["squash_most_mm"], 5 / 8 * INCH)
        loaded = self.deck_and_panel('\n[[feet]]\npart = "panel"\nload = "50 lb"\n')
        only_thickness = self.fit(room(90, extra=LEVEL_FLOOR + "\n" + CARPET), loaded)["floor"][0]
        self.near(only_thickness["squash_least_mm"], 0)
        self.near(only_thickness["squash_most_mm"], 5 / 8 * INCH)

    def test_rails_and_rungs_in_millimetres(self):
        # Rungs every 280, tops 280 to 1120, a deck at 1400 on the wall; rails 75 x 28 sink 10 as the
        # block did. The last step is 290, 10 off and over the 6.35 allowed: the rails are lengthened
        # by 10. Naive: even, 280 all the way.
        floor = ('[floor]\ndown = [' + ", ".join(
            f"['{w}', '{a} mm', '{o} mm', {exact(1000)}]"
            for w, a, o in (("left", 150, 100), ("left", 1800, 700), ("right", 1800, 150)))
            + ']\ncovering = { kind = "carpet", thickness = "16 mm" }\n'
            'squash = [{ load = "800 N", on = ["75 mm", "28 mm"], by = "10 mm" }]\n')
        mm = METRIC.replace('["left", "back"]', '["left", "right"]') + '[stock.rung]\nkind = "lumber"\nsection = ["28", "28"]\nlengths = ["2500"]\n'
        rails = "".join(part(f"rail {k}", 1700, ((x, 700, 0), "+z", "-y")) for k, x in (("a", 300), ("b", 700)))
        rails = rails.replace('v = "-y" }', 'v = "-y" }\ngroup = "ladder"')
        rung = ('\n[[part]]\nname = "rung"\nstock = "rung"\nshape = { length = "372" }\ngroup = "ladder"\n'
                'place = { at = ["328", "640", "252"], u = "+x", v = "+y" }\n'
                'repeat = { count = 4, step = ["0", "0", "280"] }\n')
        deck = (part("deck", (1100, 600), ((0, 0, 1382), "+x", "+y")) + meet("deck", "bottom", "left wall")
                + '[[fasten]]\npart = "deck"\nto = "left wall"\n'
                'screw = { gauge = 10, length = "75", kind = "wood" }\n')
        feet = "".join(f'\n[[feet]]\npart = "rail {k}"\nload = "800 N"\n' for k in "ab")
        job = Job(room(90, extra=floor), mm + rails + rung + deck + feet)
        for foot in job.json(PROGRAM, "fit")["floor"]:
            self.near(foot["squash_mm"], 10, 1e-6)
            self.near(foot["squash_least_mm"], 10, 1e-6)
        with tempfile.TemporaryDirectory() as folder:
            new = pathlib.Path(folder, "new")
            status, out, _ = job.run(PROGRAM, "adapt", "-o", str(new))
            self.assertEqual(status, 0, out)
            design = (new / "design.toml").read_text()
        self.assertEqual(design.count("length = '1710'"), 2, "both rails 10 longer")
        self.assertIn('["328", "640", \'262\']', design, "and the rungs 10 higher")


class SolidWood(KindCase):
    BOARD = '[stock.oak]\nkind = "oak board"\nthickness = "1"\n'

    def seat(self, kind, by, width=12, more=""):
        stock = self.BOARD.replace("oak board", kind)
        head = INCHES.replace("[stock.ply]", stock + "[stock.ply]")
        return (head + part("seat", (30, width), ((40, 0, 17), "+x", "+y")).replace('"ply"', '"oak"')
                + part("front", (30, 20), ((40, width + 0.75, 0), "+x", "+z"))
                + group("front", order="1", turn="false") + group("seat", order="2", height_from='"floor"')
                + meet("front", "bottom", "floor") + meet("seat", "bottom", "left wall", by=by)
                + meet("seat", "top", "front") + more)

    def moved(self, design):
        return self.fit(room(90, extra=LEVEL_FLOOR), design)["movement"]

    def test_tight_on_both_sides_across_the_grain_is_told(self):
        # 12 wide across the grain: about 1/8 over a year. Naive: all gaps are nothing, all is well.
        for by in ('"butt"', '"scribe"'):
            found = self.moved(self.seat("oak board", by))
            self.assertEqual([m["part"] for m in found], ["seat"])
            self.near(found[0]["moves_mm"], INCH / 8)
            self.near(found[0]["across_mm"], 12 * INCH)
            self.assertEqual(sorted(found[0]["meets"]), ["front", "left wall"])
        words = self.text(room(90, extra=LEVEL_FLOOR), self.seat("oak board", '"butt"'))
        self.assertIn("solid wood, tight on both sides across its grain", words)
        self.assertIn('leave 1/8" open on one side', words)
        self.assertIn("solid wood, tight", self.text(room(90, extra=LEVEL_FLOOR),
                                                     self.seat("oak board", '"butt"'), "check"))

    def test_what_gives_or_does_not_move_is_not(self):
        self.assertEqual(self.moved(self.seat("birch plywood", '"butt"')), [])
        self.assertEqual(self.moved(self.seat("particle board", '"butt"')), [])
        self.assertEqual(self.moved(self.seat("mdf", '"butt"')), [])
        self.assertEqual(self.moved(self.seat("oak board", '"caulk"')), [])
        self.assertEqual(self.moved(self.seat("oak board", '"butt"', width=2)), [])

    def test_a_stated_gap_on_one_side_settles_it(self):
        stated = self.seat("oak board", '"scribe"').replace(
            'meets = "left wall"\nby = "scribe"', 'meets = "left wall"\nby = "scribe"\ngap = "1/8"')
        self.assertEqual(self.moved(stated), [])

    def test_ends_along_the_grain_may_be_tight(self):
        # 12 x 30: the grain runs along the 30; both 30 ends... its left and right edges hold it.
        design = (INCHES.replace("[stock.ply]", self.BOARD + "[stock.ply]")
                  + part("shelf", (30, 12), ((0, 0, 40), "+x", "+y")).replace('"ply"', '"oak"')
                  + part("cheek", (12, 20), ((30.75, 0, 30), "+y", "+z"))
                  + group("cheek", order="1", turn="false")
                  + meet("shelf", "left", "right wall") + meet("shelf", "right", "cheek"))
        self.assertEqual(self.moved(design), [])


class Hidden(KindCase):
    def boxed(self, wide, cutout=""):
        """A front panel and a side panel that butts its back from 16 to 16 3/4 out of the left wall."""
        front = part("front", (wide, 40), ((50, 0, 0), "+y", "+z"))
        if cutout:
            front = front.replace("shape = {", f"cutouts = [{cutout}]\nshape = {{")
        return (INCHES + front + part("side", (20, 40), ((50, 16, 0), "-x", "+z"))
                + meet("front", "left", "left wall") + meet("side", "left", "front")
                + '\n[[covered]]\npart = "side"\nedge = "left"\nbehind = "front"\nmargin = "1/2"\n')

    def test_an_end_is_covered_by_what_is_left_of_the_panel(self):
        # The side's edge lies at 15 1/4 to 16 or 16 to 16 3/4 along the front. A front 17 1/2 wide
        # reaches 3/4 past it; with a hole from 17 on only 1/4: the hole does not cover.
        whole = self.fit(room(90, extra=LEVEL_FLOOR), self.boxed("17 1/2"))["covered"][0]
        holed = self.fit(room(90, extra=LEVEL_FLOOR), self.boxed(
            24, '{ name = "hatch", rect = ["17", "10", "4", "8"] }'))["covered"][0]
        self.near(whole["margin_mm"], 0.75 * INCH if whole["margin_mm"] < 1 * INCH else 1.5 * INCH, 0.1)
        self.near(holed["margin_mm"], whole["margin_mm"] - 0.5 * INCH, 0.1)
        self.assertEqual(whole["verdict"], "fits")

    def test_an_end_that_shows_in_a_cutout_is_told_unasked(self):
        # A hole that ends half way over the side's edge shows half of its 3/4; one that stops short
        # of it shows nothing.
        for rect, shown in (('["12", "10", "4 3/8", "8"]', 3 / 8), ('["12", "10", "3", "8"]', None)):
            design = self.boxed(24, f'{{ name = "hatch", rect = {rect} }}')
            shows = self.fit(room(90, extra=LEVEL_FLOOR), design)["shows"]
            if shown is None:
                self.assertEqual(shows, [])
                continue
            self.assertEqual([(s["part"], s["where"]) for s in shows], [("side", "hatch of front")])
            self.near(shows[0]["by_mm"], shown * INCH, 0.1)


class Sureness(KindCase):
    def test_what_is_printed_after_a_gap_is_two_sided(self):
        # A diagonal known to 5 mm leaves the wedge of a deck 36 deep uncertain by some millimeters:
        # the page says 1.960 sd, not 1 or 1.645.
        text = room(91.4, extra=LEVEL_FLOOR).replace('sd = "0.0001 mm"', 'sd = "5 mm"')
        design = (INCHES + part("deck", (46, 36), ((0, 0, 30), "+x", "+y"))
                  + group("deck", tight_to='["left wall"]', height_from='"floor"')
                  + meet("deck", "bottom", "left wall") + meet("deck", "left", "right wall", by='"taper"'))
        sd = self.contact(self.fit(text, design), "right wall")["sd_mm"]
        self.assertGreater(sd, 2)
        _, out, _ = Job(text, design).run(PROGRAM, "fit", "--units", "mm")
        words = " ".join(out.split())
        told = int(words.split("right wall: gap")[1].split("give or take ")[1].split(" ")[0])
        self.assertLessEqual(abs(told - 1.96 * sd), 1, (told, sd))

    def test_a_notch_is_deep_enough_one_sided(self):
        # Readings known to 1 mm: a notch is k sd of the obstacle less the touch deeper than the board
        # needs, k = 1.645 at .95 and .842 at .8 (400 draws tell the difference to a quarter).
        # The wall leans in by 1 in 200, so that the panel always touches at its top.
        text = room(90, extra=LEVEL_FLOOR, left=board(), line_lean=(0.005, 0)).replace(
            'sd = "0.0001 mm"', 'sd = "1 mm"')
        deep = {sure: Job(text, self.corner_panel(70)).json(PROGRAM, "fit", "--sure", str(sure))["notches"][0]
                for sure in (0.95, 0.8)}
        self.assertGreater(deep[0.95]["sd_mm"], 0.2)
        more = deep[0.95]["depth_mm"] - deep[0.8]["depth_mm"]
        self.near(more, (1.645 - 0.842) * deep[0.95]["sd_mm"], 0.25 * more)


class Pages(KindCase):
    def test_what_holds_a_piece_off_is_named_before_anything_to_close_the_gap(self):
        # A shelf 46 long with its long edge on the wall, where a casing stands 3/4 out from 40 to 43.
        # It is open by 3/4 all along. Naive: a filler or a scribe of 46 x 3/4, where it only has to
        # end at 40 or be notched.
        cased = with_obstacle(room(90, extra=LEVEL_FLOOR), "casing", (40, 43), (0, 84), "3/4")
        held = "the left wall casing holds it off: notch it there, or end it short of that; else"
        for length, by, told in ((46, '"butt"', True), (46, '"scribe"', True), (46, '["scribe", "notch"]', False),
                                 (39, '"butt"', False)):
            with self.subTest(length=length, by=by):
                design = (INCHES + part("shelf", (length, 12), ((length, 0, 48), "-x", "+y"))
                          + group("shelf", tight_to='["right wall"]')
                          + meet("shelf", "bottom", "left wall", by=by) + meet("shelf", "right", "right wall"))
                self.assertEqual(held in self.text(cased, design), told)

    def test_carpet_is_pressed_down_before_wood_comes_off(self):
        # A post hung by the level line, 1/4 in too low for a floor whose carpet gives 3/8; on a bare
        # floor the 1/4 has to come off.
        design = (INCHES + part("post", (10, 30), ((40, 20, -0.25), "+x", "+z"))
                  + group("post", height_from='"level line"') + meet("post", "bottom", "floor", by='"shim"')
                  + '[[feet]]\npart = "post"\nload = "180 lb"\n')
        for covering, told in ((CARPET + STOOD_ON, "press the covering down there first: it gives up to 3/8"),
                               ("", 'take 1/4" off this edge')):
            self.assertIn(told, self.text(room(90, extra=sloping_floor(0, covering)), design))

    def test_a_shelf_that_stops_at_its_board_is_notched_for_a_pipe_all_the_same(self):
        # A shelf 3/4 thick at 5 in stops at a board 5 1/4 high and 9/16 thick. A pipe stands from 1 to
        # 2 in off the wall, 1 1/4 wide: the notch is 2 - 9/16 + 1/8 deep and 1 1/4 + 2/8 wide.
        # Naive: a notch for both along the whole edge, so none at all, and a shelf held off by the pipe.
        text = with_obstacle(room(90, extra=LEVEL_FLOOR, board=board()), "pipe", ("20", "21 1/4"), (0, 90), "0")
        text = text.replace('out = "0"', 'out = ["1", "2"]')
        design = (INCHES + part("shelf", (30, 12), ((40, 0, 5), "-x", "+y"))
                  + group("shelf", tight_to='["left wall"]', height_from='"floor"')
                  + meet("shelf", "bottom", "left wall", by='"notch"', clearance='"1/8"', allow='"3/4"'))
        answer = self.fit(text, design)
        notch, = answer["notches"]
        self.assertEqual(notch["for"], "left wall pipe")
        self.near(self.high(notch), (2 - 9 / 16 + 1 / 8) * INCH, 0.1)
        self.near(self.deep(notch), (1.25 + 2 / 8) * INCH, 0.1)
        self.near(self.contact(answer, "left wall")["gap_most_mm"], 0)  # to the board, all along
        self.assertEqual([clash for clash in answer["clashes"] if "pipe" in clash["with"]], [])

    def test_the_air_wanted_beside_a_wall_is_its_gap_whatever_is_allowed(self):
        # 1/2 in of air where 3/4 is wanted: `allow` is a widest gap, and no wish for less air.
        design = (INCHES + part("box", (12, 12), ((12.5, 1, 0), "-x", "+z"))
                  + meet("box", "right", "right wall", by='"clear"', gap='"3/4"', allow='"1/8"'))
        answer = self.fit(room(90, extra=LEVEL_FLOOR), design)
        self.assertEqual({found["verdict"] for found in answer["contacts"] + answer["clearances"]
                          if "right wall" in (found.get("meets"), found.get("from"))}, {"does not fit"})

    def test_a_wall_whose_name_goes_on_is_another(self):
        # Against the wall "a" stands a shelf; "a wall b" is the name of the other wall.
        text = room(90, extra=LEVEL_FLOOR).replace('"right"', '"a wall b"').replace('"left"', '"a"')
        text = text.replace("'left'", "'a'").replace("'right'", "'a wall b'")
        design = (INCHES.replace('"left", "right"', '"a", "a wall b"')
                  + part("shelf", (20, 12), ((20.5, 0, 40), "-x", "+y"))
                  + meet("shelf", "bottom", "a wall", by='"clear"', gap='"0"'))
        from_walls = [found["from"] for found in self.fit(text, design)["clearances"]]
        self.assertIn("a wall b wall", from_walls)

    def test_no_blank_lines_where_nothing_is_found(self):
        # A panel in the open meets nothing: one blank line between the verdict and what follows.
        design = INCHES + part("panel", (24, 30), ((40, 30, 0), "+x", "+z"))
        _, out, _ = Job(room(90, extra=LEVEL_FLOOR), design).run(PROGRAM, "fit")
        self.assertTrue(out.startswith("FITS\n\nIn this order:\n"), out)


if __name__ == "__main__":
    unittest.main()
