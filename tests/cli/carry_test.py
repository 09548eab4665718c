"""The way in through the command: hall turns, tipping up, alcoves, door leaves."""

import math
import unittest

from corner import INCH, LEVEL_FLOOR, Job, room
from program import NOOKFIT, TOP

PROGRAM = str(TOP / NOOKFIT)


def design(*parts):
    text = ('units = "inch"\ncorner = ["left", "right"]\n[stock.ply]\nkind = "plywood"\n'
            'thickness = "3/4"\nsheet = ["60", "144"]\n[stock.stick]\nkind = "lumber"\n'
            'section = ["3/4", "3/4"]\nlengths = ["144"]\n')
    for name, shape, place in parts:
        stock = "stick" if "length" in shape else "ply"
        text += f'[[part]]\nname = "{name}"\nstock = "{stock}"\nshape = {shape}\nplace = {place}\n'
    return text


LEVEL = '{ at = ["0", "0", "30"], u = "+x", v = "+y" }'
UPRIGHT = '{ at = ["20", "0", "0"], u = "+y", v = "+z" }'
CEILING = "[ceiling]\nup = [" + ", ".join(
    f"['{wall}', '{along}', '{out}', '{{}}']"
    for wall, along, out in (("left", 6, 4), ("left", 70, 30), ("right", 70, 6))) + "]\n"


class Carry(unittest.TestCase):
    def passes(self, parts, access, ceiling=None):
        extra = LEVEL_FLOOR + "\n"
        if ceiling:
            extra += CEILING.format(*[ceiling] * 3)
        job = Job(room(90, extra=extra + access), design(*parts))
        self.addCleanup(job.dir.cleanup)
        self.answer = job.json(PROGRAM, "carry")
        return {p["name"]: p for p in self.answer["pieces"][0]["passes"]}

    def test_a_120_in_stick_passes_36_into_38_tipped_and_not_flat(self):
        hall = '[access]\nturns = [{{ name = "hall", from = "36", to = "38", height = "{}" }}]\n'
        flat = (36 ** (2 / 3) + 38 ** (2 / 3)) ** 1.5
        self.assertAlmostEqual(flat, 104.625, delta=1 / 32)
        low = self.passes([("stick", '{ length = "120" }', LEVEL)], hall.format(40))["hall"]
        self.assertEqual(low["verdict"], "does not fit")
        high = self.passes([("stick", '{ length = "120" }', LEVEL)], hall.format(95))["hall"]
        self.assertEqual(high["verdict"], "fits")
        self.assertIn("tipped", high["how"])

    def test_tipping_up_takes_the_root_of_h_squared_and_t_squared(self):
        tall = [("panel", '{ size = ["30", "90"] }', UPRIGHT)]
        needs = math.hypot(90, 0.75)
        for above, verdict in ((51, "fits"), (49, "does not fit")):  # from the line, 40 up
            found = self.passes(tall, "[access]\nopenings = []\n", ceiling=str(above))
            tip = next(p for name, p in found.items() if "ceiling" in name)
            self.assertEqual(tip["verdict"], verdict, found)
            self.assertAlmostEqual(tip["spare_mm"], (above + 40 - needs) * INCH, delta=2)

    def test_a_door_leaf_left_on_takes_its_thickness_from_the_width(self):
        box = [("deck", '{ size = ["29", "40"] }', LEVEL)]
        door = '[access]\nopenings = [{{ name = "door", width = "30", height = "80"{} }}]\n'
        off = self.passes(box, door.format(""))["door"]
        on = self.passes(box, door.format(', leaf = "1 3/8"'))["door"]
        self.assertAlmostEqual(off["spare_mm"] - on["spare_mm"], 1.375 * INCH, delta=0.5)

    def answered(self, room_text, design_text):
        """The pieces of an answer by name; `self.page()` is the same job's page."""
        job = Job(room_text, design_text)
        self.addCleanup(job.dir.cleanup)
        self.job = job
        self.answer = job.json(PROGRAM, "carry")
        return {piece["part"]: piece for piece in self.answer["pieces"]}

    def page(self):
        return " ".join(self.job.run(PROGRAM, "carry")[1].split())

    def test_a_panel_too_high_for_the_door_either_way_goes_in_tilted_while_geometry_lets_it(self):
        door = '[access]\nopenings = [{ name = "door", width = "20", height = "40" }]\n'
        for side in (41, 42, 44, 46):
            # A section of side x 3/4 turned by a is side cos a + t sin a high and side sin a + t cos a wide.
            spare = max(min(40 - side * math.cos(a) - 0.75 * math.sin(a), 20 - side * math.sin(a) - 0.75 * math.cos(a))
                        for a in (math.radians(k / 100) for k in range(9001)))
            found = self.passes([("panel", f'{{ size = ["{side}", "{side}"] }}', UPRIGHT)], door)["door"]
            with self.subTest(side=side, spare=spare):
                self.assertEqual(found["verdict"], "fits" if spare > 0 else "does not fit", found)
                self.assertIn("tilted", found["how"])

    def test_a_door_narrower_than_the_panel_lets_it_through_on_edge(self):
        door = '[access]\nopenings = [{ name = "door", width = "29", height = "80" }]\n'
        found = self.passes([("panel", '{ size = ["36", "90"] }', UPRIGHT)], door)["door"]
        self.assertEqual((found["verdict"], found["how"]), ("fits", "on edge"))
        # 36 high on edge under 80, 3/4 through 29: 28 1/4 of width is the tighter.
        self.assertAlmostEqual(found["spare_mm"], 28.25 * INCH, delta=0.1)

    def test_a_leaf_that_is_in_the_way_is_taken_off_its_hinges(self):
        parts = [("box end", '{ size = ["40", "40"] }', UPRIGHT)]
        door = '[access]\nopenings = [{ name = "hatch", width = "1 1/2", height = "45", leaf = "1" }]\n'
        found = self.passes(parts, door)["hatch"]
        self.assertEqual(found["verdict"], "does not fit")
        self.assertAlmostEqual(found["spare_mm"], (1.5 - 1 - 0.75) * INCH, delta=0.1)
        self.assertAlmostEqual(found["leaf_off_spare_mm"], (1.5 - 0.75) * INCH, delta=0.1)
        extra = LEVEL_FLOOR + "\n" + door
        self.answered(room(90, extra=extra), design(*parts))
        self.assertIn('take the door off its hinges: then 3/4" to spare', self.page())

    def test_a_stick_round_a_low_turn_passes_to_the_inch_that_the_ladder_with_width_allows(self):
        # Corner of a inch into b: a stick t thick at angle x touches the inner corner when its length is
        # a / sin x + b / cos x - 2 t / sin 2x; the least over x passes.
        a, b, t = 36, 38, 0.75
        most = min(a / math.sin(x) + b / math.cos(x) - 2 * t / math.sin(2 * x)
                   for x in (math.radians(k / 200) for k in range(1, 18000)))
        hall = '[access]\nturns = [{ name = "hall", from = "36", to = "38", height = "1" }]\n'
        for length in (most - 0.5, most + 0.5):
            found = self.passes([("stick", f'{{ length = "{length:.4f}" }}', LEVEL)], hall)["hall"]
            self.assertEqual(found["verdict"], "fits" if length < most else "does not fit", found)

    def test_a_panel_is_stood_up_out_in_the_room_where_something_stands_in_its_way(self):
        # The low box stands where the tall panel would be tipped up; the ceiling takes the panel standing.
        ceiling = LEVEL_FLOOR + "\n" + CEILING.format("51", "51", "51") + "[access]\nopenings = []\n"
        tall = ("tall panel", '{ size = ["30", "90"] }', '{ at = ["20", "0", "0"], u = "+y", v = "+z" }')
        low = ("low panel", '{ size = ["30", "40"] }', '{ at = ["30", "0", "0"], u = "+y", v = "+z" }')
        alone = self.answered(room(90, extra=ceiling), design(tall))
        tip = alone["tall panel"]["passes"][-1]
        self.assertEqual((tip["verdict"], tip["how"]), ("fits", "tipped up at its place"))
        beside = self.answered(room(90, extra=ceiling), design(low, tall))
        tip = beside["tall panel"]["passes"][-1]
        self.assertEqual(tip["verdict"], "fits", tip)
        self.assertIn("stood up out in the room", tip["how"])
        self.assertIn("low panel", tip["how"])

    def test_a_ceiling_that_nobody_measured_cannot_be_told(self):
        tall = ("tall panel", '{ size = ["30", "90"] }', UPRIGHT)
        found = self.answered(room(90, extra=LEVEL_FLOOR + "\n[access]\nopenings = []\n"), design(tall))
        self.assertEqual(found["tall panel"]["verdict"], "cannot tell")
        self.assertIn("the height of the ceiling is not known -> measure it", self.page())

    def test_a_group_that_does_not_pass_whole_goes_in_piece_by_piece_in_its_order(self):
        # Two panels and a shelf joined to a box 30 x 40 x 60 do not pass a door 20 x 50; each alone does.
        parts = ""
        for name, size, place in (("second side", '["40", "45"]', '{ at = ["32", "0", "0"], u = "+y", v = "+z" }'),
                                  ("first side", '["40", "45"]', '{ at = ["2", "0", "0"], u = "+y", v = "+z" }'),
                                  ("shelf", '["29 1/4", "40"]', '{ at = ["2 3/4", "0", "20"], u = "+x", v = "+y" }')):
            parts += (f'[[part]]\nname = "{name}"\nstock = "ply"\nshape = {{ size = {size} }}\nplace = {place}\n'
                      'group = "box"\n')
        text = ('units = "inch"\ncorner = ["left", "right"]\n[stock.ply]\nkind = "plywood"\nthickness = "3/4"\n'
                'sheet = ["60", "144"]\n' + parts + '[[group]]\nname = "box"\n')
        ceiling = LEVEL_FLOOR + "\n" + CEILING.format("60", "60", "60")
        for width, whole in ((20, "does not fit"), (32, "fits")):
            door = f'[access]\nopenings = [{{ name = "door", width = "{width}", height = "50" }}]\n'
            pieces = self.answered(room(90, extra=ceiling + door), text)
            self.assertEqual({name: piece["verdict"] for name, piece in pieces.items()},
                             dict.fromkeys(("second side", "first side", "shelf"), "fits"))
            group = self.answer["groups"][0]
            self.assertEqual((group["name"], group["whole"]), ("box", whole), group)
            self.assertEqual(self.answer["verdict"], "fits")  # in pieces it goes in
            if whole != "fits":
                self.assertEqual(sorted(group["order"]), ["first side", "second side", "shelf"])
                self.assertIn("carry it in pieces and join them in the room, in this order: "
                              + ", ".join(group["order"]), self.page())

    ALCOVE = """units = "mm"
[flatness]
sd = "0"
[tape]
corner = "block"
[[wall]]
name = "left"
length = "700"
[[wall]]
name = "back"
length = {{ is = "1200", sd = "0.01" }}
[[wall]]
name = "right"
length = "700"
[[corner]]
walls = ["left", "back"]
height = "300"
diagonals = [[{m4}, {m3}, {left}]]
[[corner]]
walls = ["back", "right"]
height = "300"
diagonals = [[{m3}, {m4}, {right}]]
{plumbs}
[floor]
down = [["left", "100", "50", "1000"], ["back", "600", "60", "1000"], ["right", "600", "100", "1000"]]
[ceiling]
up = [["left", "100", "50", "1400"], ["back", "600", "60", "1400"], ["right", "600", "100", "1400"]]
[access]
openings = []
"""

    def alcove(self, degrees):
        """Side walls `degrees` from the back wall, exact readings, walls plumb."""
        sure = lambda mm: f'{{ is = "{mm:.6f} mm", sd = "0.0001 mm" }}'
        cosine = math.sqrt(300 ** 2 + 400 ** 2 - 2 * 300 * 400 * math.cos(math.radians(degrees)))
        text = self.ALCOVE.format(m3=sure(300), m4=sure(400), left=sure(cosine), right=sure(cosine), plumbs="")
        line = "[[wall.plumb]]\nat = '200'\nline = [" + ", ".join(f"['{h}', {sure(60)}]" for h in (250, 900, 2000)) + "]\n"
        for name in ("left", "back", "right"):
            at = text.index("[[", text.index(f'name = "{name}"'))
            text = text[:at] + line + text[at:]
        return text

    def seat(self, width):
        return ('units = "mm"\ncorner = ["left", "back"]\n[stock.ply]\nkind = "plywood"\nthickness = "18"\n'
                'sheet = ["1250", "2500"]\n[[part]]\nname = "seat"\nstock = "ply"\n'
                f'shape = {{ size = ["{width}", "300"] }}\n'
                'place = { at = ["400", "0", "450"], u = "+y", v = "-x" }\n')

    def test_an_alcove_narrower_in_front_lets_in_straight_what_its_front_lets_through(self):
        # Side walls 700 long, 88.5 degrees from the back: in front they are 2 x 700 tan 1.5 nearer.
        front = 1200 - 2 * 700 * math.tan(math.radians(1.5))
        for width in (1160, 1195):
            found = self.answered(self.alcove(88.5), self.seat(width))["seat"]
            into = [p for p in found["passes"] if "alcove" in p["name"]]
            self.assertEqual(len(into), 1, found)
            slides = into[0].get("slides_spare_mm", into[0]["spare_mm"])
            self.assertAlmostEqual(slides, front - width, delta=1.5)
            self.assertEqual(into[0]["how"] == "slid straight in", width < front)
            if width > front:
                self.assertRegex(self.page(), "cannot slide straight in: the alcove is 3[12] mm narrower in front")
                self.assertAlmostEqual(into[0]["widest_sliding_mm"], front, delta=1.5)


if __name__ == "__main__":
    unittest.main()
