"""The room's page in a maker's words: readings by name, facts beside the numbers, the tape that must come out right."""

import json
import re
import unittest

from corner import LEVEL_FLOOR, room
from program import TOP, JobFolder, answer, nookfit

LOOKOUT = (TOP / "rooms/lookout/design.toml").read_text(encoding="utf-8")
ID = r"\w+\[\d+\]"
PLUMB = "\n".join(f"[[wall.plumb]]\nat = '{at}'\nline = [['12', '2'], ['40', '2'], ['88', '2']]" for at in (20, 70))


def flat(text):
    return re.sub(r"\s+", " ", text)


def corner_with(wall="", corner="", extra=""):
    """A square corner, its diagonals doubled, both walls plumb."""
    return f'''units = "inch"
[tape]
corner = "block"
[[wall]]
name = "left"
length = '118'
{PLUMB}
{wall}
[[wall]]
name = "right"
length = '96'
{PLUMB}
[[corner]]
walls = ["left", "right"]
height = '30'
diagonals = [['36', '48', ['60', '60']], ['48', '36', ['60', '60']], ['60', '60', ['84 7/8', '84 7/8']]]
{corner}
{extra}
'''


class RoomWords(unittest.TestCase):
    def test_readings_stand_by_name_and_ids_only_in_json_and_the_table(self):
        for job in ("lookout", "window-bench", "corner-desk"):
            page = nookfit("room", f"rooms/{job}").stdout
            self.assertIsNone(re.search(ID, page), page)
            said = answer("room", f"rooms/{job}")
            self.assertTrue(all(re.search(ID, entry) for entry in said["uncheckable"]))
            names = {reading["id"]: reading["name"] for reading in said["readings"]}
            self.assertTrue(all(name and not re.search(ID, name) for name in names.values()))
            verbose = nookfit("room", f"rooms/{job}", "--verbose").stdout
            self.assertRegex(verbose, ID)
            for entry in said["uncheckable"]:
                self.assertIn(names[entry], flat(verbose))

    def test_a_slip_is_named_in_words_with_what_it_may_have_been(self):
        text = corner_with().replace("['84 7/8', '84 7/8']", "['84 7/8', '85 7/8']")
        with JobFolder(room=text) as folder:
            page = flat(nookfit("room", folder).stdout)
        self.assertIn('left/right corner, diagonal 60" to 60", 30" up, taken again', page)
        self.assertIn("perhaps a burned inch not taken off", page)
        self.assertIn("take it again, or strike what is wrong", page)

    def test_an_outlet_clear_of_every_stud_is_told_beside_the_numbers(self):
        studs = ("[wall.studs]\nspacing = '16'\nfound = [{ edges = ['14 1/4', '15 3/4'], by = 'nail' }]\n"
                 "[[wall.obstacle]]\nkind = 'outlet'\nalong = ['%s', '%s']\nheight = ['12', '16']\n")
        fact = "there is a stud nobody found, or a cable that follows none"
        for at, told in ((("22", "24 1/4"), True), (("15 3/4", "18"), False)):
            with JobFolder(room=corner_with(wall=studs % at, extra=LEVEL_FLOOR), design=LOOKOUT) as folder:
                self.assertEqual(fact in flat(nookfit("room", folder).stdout), told)
                self.assertEqual(fact in flat(nookfit("check", folder).stdout), told)
                self.assertEqual(len(answer("room", folder)["facts"]), told)

    def test_readings_that_bend_together_near_the_corner_are_mud_and_no_slip(self):
        near = [[str(at), str(line)] for at, line in ((0.5, 1.32), (2, 1.39), (4, 1.49), (8, 1.56), (24, 1.56), (48, 1.56))]
        strings = "".join(f"[[wall.string]]\nheight = '{height}'\nline = {near}\n" for height in (24, 40, 56))
        text = corner_with(wall=strings).replace("name = \"right\"\nlength = '96'\n", "name = \"right\"\nlength = '96'\n" + strings)
        with JobFolder(room=text.replace("[tape]", "[flatness]\nsd = '1 mm'\n[tape]")) as folder:
            said = answer("room", folder)
        self.assertEqual(len(said["suspects"]), 1, said["suspects"])
        self.assertGreater(len(said["suspects"][0]["ids"]), 3)
        self.assertIn("mud", said["suspects"][0]["reason"])
        self.assertAlmostEqual(said["suspects"][0]["likely_mm"], 6.4, delta=2.5)

    def test_nothing_is_asked_for_twice(self):
        thin = corner_with().replace("[['36', '48', ['60', '60']], ['48', '36', ['60', '60']], ['60', '60', ['84 7/8', '84 7/8']]]",
                                     "[['36', '48', '60']]")
        for files in ({"room": thin}, {"room": corner_with()}):
            with JobFolder(**files) as folder:
                next_ones = [entry["reading"] for entry in answer("room", folder)["measure_next"]]
            self.assertGreater(len(next_ones), 1)
            self.assertEqual(len(set(next_ones)), len(next_ones))

    def test_flat_walls_and_walls_that_nobody_held_a_level_to_are_said_in_words(self):
        flat_walls = corner_with().replace("[tape]", "[flatness]\nsd = '0'\n[tape]")
        with JobFolder(room=flat_walls) as folder:
            page = flat(nookfit("room", folder).stdout)
        self.assertIn("The walls are taken as flat (as the file says).", page)
        self.assertNotIn("usually stray", page)
        bare = corner_with().replace(PLUMB, "")
        with JobFolder(room=bare) as folder:
            page = flat(nookfit("room", folder).stdout)
        self.assertIn("; may lean: nothing says how far", page)
        self.assertNotIn("stands plumb", page)
        with JobFolder(room=corner_with()) as folder:
            self.assertIn('stands plumb in 48"', flat(nookfit("room", folder).stdout))

    def test_an_empty_room_is_not_known(self):
        with JobFolder(room='units = "inch"\n') as folder:
            run = nookfit("room", folder)
            said = answer("room", folder)
        self.assertEqual((run.returncode, said["verdict"]), (1, "cannot tell"))
        self.assertIn("nothing is measured yet -> 'nookfit survey' asks", flat(run.stdout))

    def test_openings_between_what_is_up_are_listed_as_found(self):
        up = ('[[installed]]\nparts = ["left ledger"]\nopenings = [{ between = ["left ledger", "right wall"], out = "1", '
              'height = "40", is = ["46 1/16", "46"] },\n  { between = ["left wall", "right ledger"], out = "30", from_line = "-2", is = "45 1/2" }]\n')
        with JobFolder(room=corner_with(extra=up)) as folder:
            page = flat(nookfit("room", folder).stdout)
            metric = flat(nookfit("room", folder, "--units", "mm").stdout)
        self.assertIn('Between the left ledger and the right wall, 1" out, 40" up: 46 1/16", again 46" as measured.', page)
        self.assertIn('Between the left wall and the right ledger, 30" out, 2" below the line: 45 1/2" as measured.', page)
        self.assertIn("Between the left ledger and the right wall, 25 mm out, 1016 mm up: 1170 mm, again 1168 mm as measured.", metric)

    def test_the_one_tape_that_must_come_out_right(self):
        page = flat(nookfit("check", "rooms/lookout").stdout)
        found = re.search(r'a straight tape from (\S+)" along the left wall to (\S+)" along the right wall, both (\S+)" up '
                          r'has to read ([^,]+)", give or take ([^.]+)"\. If it does not, do not cut\.', page)
        self.assertIsNotNone(found, page)
        left, right, up, reads, about = found.groups()
        told = flat(nookfit("room", "rooms/lookout", "--expect", f"left:{left}", f"right:{right}", f"height:{up}").stdout)
        self.assertIn(f'{reads}", give or take', told)
        self.assertIn(f'A tape between marks laid off by hand reads that, give or take {about}"', told)

    def test_an_angle_with_its_own_plus_or_minus_needs_no_blade(self):
        text = room(91.4, extra=LEVEL_FLOOR) + '\n[[corner]]\nwalls = ["left", "right"]\nangles = [{ is = "91.4", sd = "0.02" }]\n'
        with JobFolder(room=text) as folder:
            found = answer("room", folder)
        reading, = [r for r in found["readings"] if ".angles[" in r["id"]]
        self.assertAlmostEqual(found["corners"][0]["angle_deg"], 91.4, delta=0.01)
        self.assertEqual(found["suspects"], [])
        self.assertLess(abs(reading["w"]), 1)

    def test_the_last_tape_counts_its_height_from_the_floor(self):
        # The level line is 40 1/16 above the high spot: 30 below it is about 10 up.
        texts = {name: (TOP / f"rooms/lookout/{name}.toml").read_text() for name in ("room", "design")}
        texts["room"] = texts["room"].replace("height    = '41'\ndiagonals", "from_line = '-30'\ndiagonals")
        with JobFolder(**texts) as folder:
            page = flat(nookfit("check", folder).stdout)
        self.assertRegex(page, r'along the right wall, both 10( \d/\d+)?" up has to read')

    def test_the_last_tape_stays_on_both_walls_and_off_the_corner(self):
        # A ledger on the left wall alone, and one that reaches past the right wall's 30 in.
        for length, wall, short in ((46, "left", "118"), (60, "right", "30")):
            design = ('corner = ["left", "right"]\n[stock.rail]\nkind = "lumber"\nsection = ["1 1/4", "3"]\n'
                      f'[[part]]\nname = "ledger"\nstock = "rail"\nshape = {{ length = "{length}" }}\n'
                      + ('place = { at = ["46", "0", "30"], u = "-x", v = "+z" }\n' if wall == "left" else
                         'place = { at = ["0", "0", "30"], u = "+y", v = "+z" }\n')
                      + f'[[contact]]\npart = "ledger"\nface = "back"\nmeets = "{wall} wall"\n')
            text = room(90, extra=LEVEL_FLOOR).replace('length = "96"', f'length = "{short if wall == "right" else 96}"')
            with self.subTest(wall=wall), JobFolder(room=text, design=design) as folder:
                page = flat(nookfit("check", folder).stdout)
                left, right = re.search(r'from (\d+)" along the left wall to (\d+)" along the right', page).groups()
                self.assertGreaterEqual(min(int(left), int(right)), 12)
                self.assertLessEqual(int(right), 30 if wall == "right" else 96)

    def test_expect_in_other_units_and_roundings(self):
        marks = ("--expect", "left:50", "right:70", "height:30")
        said = answer("room", "rooms/lookout", *marks)["expect"]
        for options, step, unit in ((("--units", "mm"), 1, "mm"), (("--units", "cm", "--round", "0.5 cm"), 5, "cm"),
                                    (("--units", "mm", "--round", "10 mm"), 10, "mm")):
            page = flat(nookfit("room", "rooms/lookout", *marks, *options).stdout)
            found = re.search(r"both [\d.]+ (?:mm|cm) up: ([\d.]+) (mm|cm), give or take", page)
            self.assertIsNotNone(found, page)
            value = float(found[1]) * (10 if unit == "cm" else 1)
            self.assertEqual(found[2], unit)
            self.assertLessEqual(abs(value - said["value_mm"]), step / 2 + 1e-6)
            self.assertAlmostEqual(value / step, round(value / step), places=6)

    def test_expect_between_marks_in_either_order_and_to_a_corner(self):
        net = ('units = "cm"\n[[mark]]\nname = "a"\n[[mark]]\nname = "b"\n[[mark]]\nname = "c"\n'
               '[[span]]\nbetween = ["a", "b"]\nis = "300"\n[[span]]\nbetween = ["b", "c"]\nis = "400"\n'
               '[[span]]\nbetween = ["a", "c"]\nis = "500"\n')
        with JobFolder(room=net) as folder:
            one = answer("room", folder, "--expect", "mark:a", "mark:c")["expect"]
            two = answer("room", folder, "--expect", "mark:c", "mark:a")["expect"]
            self.assertAlmostEqual(one["value_mm"], two["value_mm"], places=9)
            self.assertIn("5000 mm, give or take", flat(nookfit("room", folder, "--units", "mm", "--expect", "mark:a", "mark:c").stdout))
            wrong = nookfit("room", folder, "--expect", "mark:a", "mark:d")
            self.assertEqual((wrong.returncode, "[expect]" in wrong.stderr), (2, True))

    def test_what_stands_or_hangs_by_height_wants_three_readings_of_the_floor(self):
        def missing(design, floor):
            files = {"room": room(90, extra=floor), **({"design": design} if design else {})}
            with JobFolder(**files) as folder:
                return [entry for entry in answer("room", folder)["missing"] if "the floor" in entry["what"]]
        one = "[floor]\ndown = [['left', '6', '4', '40']]\n"
        told = missing(LOOKOUT, one)
        self.assertEqual(len(told), 1)
        self.assertIn("2 more places", told[0]["what"])
        self.assertFalse(told[0]["blocks"])
        self.assertIn("3 more places", missing(LOOKOUT, "")[0]["what"])
        self.assertEqual(missing(LOOKOUT, LEVEL_FLOOR), [])
        self.assertEqual(missing(None, one), [])


if __name__ == "__main__":
    unittest.main()
