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


if __name__ == "__main__":
    unittest.main()
