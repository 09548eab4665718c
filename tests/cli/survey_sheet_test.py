"""The measuring sheet for a design on a room that nobody has measured: what, where, how long."""

import hashlib
import json
import pathlib
import re
import tempfile
import unittest

from corner import LEVEL_FLOOR, Job, room
from program import NOOKFIT, TOP, JobFolder, nookfit

WALLS = 'units = "inch"\n[[wall]]\nname = "left"\n[[wall]]\nname = "right"\n'
ALCOVE = "".join(['units = "mm"\n'] + [f'[[wall]]\nname = "{name}"\n' for name in ("left", "back", "right")])
LOOKOUT = (TOP / "rooms/lookout/design.toml").read_text(encoding="utf-8")
BENCH = (TOP / "rooms/window-bench/design.toml").read_text(encoding="utf-8")


def panel(by):
    """An upright panel 84 in high, tight to the left wall 47 in out."""
    return f'''units = "inch"
corner = ["left", "right"]
[stock.ply]
kind = "plywood"
thickness = '3/4'
[[part]]
name = "panel"
stock = "ply"
shape = {{ size = ['30', '84'] }}
place = {{ at = ['47', '0', '0'], u = "+y", v = "+z" }}
[[contact]]
part = "panel"
edge = "left"
meets = "left wall"
{by}
'''


def sheet(room, design):
    with JobFolder(room=room, design=design) as folder:
        done = nookfit("survey", folder, "--sheet", "--json")
        return done.returncode, json.loads(done.stdout)


def readings(answer):
    return [step for stop in answer["sheet"]["stops"] for step in stop["steps"] if step["reading"]]


class SurveySheet(unittest.TestCase):
    def test_walls_alone_are_enough_and_nothing_is_written(self):
        with JobFolder(room=WALLS, design=LOOKOUT) as folder:
            before = self.bytes_of(folder)
            done = nookfit("survey", folder, "--sheet")
            self.assertEqual(done.returncode, 1)  # the room cannot be told yet
            self.assertEqual(done.stderr, "")
            self.assertEqual(self.bytes_of(folder), before)
            self.assertLessEqual(max(map(len, done.stdout.splitlines())), 80)
            self.assertRegex(done.stdout, r"About \d+ minutes, \d+ of them for \d+ readings")

    def bytes_of(self, folder):
        return {path.name: hashlib.sha256(path.read_bytes()).hexdigest() for path in pathlib.Path(folder).iterdir()}

    def test_a_design_alone_is_enough(self):
        with JobFolder(design=LOOKOUT) as folder:
            done = nookfit("survey", folder, "--sheet")
            self.assertEqual(done.returncode, 1)
            self.assertIn("Corner of the left and the right wall", done.stdout)
            self.assertEqual([path.name for path in pathlib.Path(folder).iterdir()], ["design.toml"])

    def test_stops_stand_in_walking_order(self):
        _, answer = sheet(WALLS, LOOKOUT)
        order = ["Look and list", "Level line", "Floor", "Ceiling", "Corner of the left and the right wall", "The left wall",
                 "The right wall", "Studs", "Obstacles", "The way in"]
        names = [stop["name"] for stop in answer["sheet"]["stops"]]
        self.assertEqual(names, [name for name in order if name in names])
        for needed in ("Floor", "Studs", "Obstacles", "The way in", order[4]):
            self.assertIn(needed, names)

    def test_few_readings_each_checked_and_the_minutes_add_up(self):
        for room_text, design in ((WALLS, LOOKOUT), (ALCOVE, BENCH)):
            _, answer = sheet(room_text, design)
            plan = readings(answer)
            self.assertTrue(answer["sheet"]["enough"])
            self.assertLessEqual(len(plan), 15)
            self.assertLessEqual(answer["sheet"]["reading_minutes"], 20)
            self.assertEqual(len(plan), answer["sheet"]["readings"])
            steps = [step for stop in answer["sheet"]["stops"] for step in stop["steps"]]
            self.assertAlmostEqual(sum(step["minutes"] for step in steps), answer["sheet"]["minutes"], places=9)
            self.assertTrue(all(step["twice"] in (True, False) for step in plan))

    def test_a_tighter_contact_asks_for_more_up_the_same_edge(self):
        kinds = {}
        for by in ('by = "scribe"', "allow = '1/8'", "allow = '1/16'"):
            _, answer = sheet(WALLS, panel(by))
            kinds[by] = [step["what"] for step in readings(answer)]
        self.assertLess(len(kinds['by = "scribe"']), len(kinds["allow = '1/16'"]) + 1)
        close = " ".join(kinds["allow = '1/16'"])
        self.assertIn('plumb line at the left wall, 47" from the corner: line to wall every 16"', close)
        self.assertNotIn("plumb line", " ".join(kinds['by = "scribe"']))

    def test_studs_are_asked_for_behind_what_is_screwed_on(self):
        with JobFolder(room=WALLS, design=LOOKOUT) as folder:
            page = nookfit("survey", folder, "--sheet").stdout
        text = re.sub(r"\s+", " ", page)
        self.assertRegex(text, r'behind the left ledger: studs of the left wall from 1/4" to 47" along, 40 13/16" up')
        self.assertIn("tap a fine nail", text)

    def test_no_mark_beyond_an_alcove_that_only_the_design_tells_of(self):
        _, answer = sheet(ALCOVE, BENCH)
        for step in readings(answer):
            for along in re.findall(r"(\d+) mm on the back wall", step["what"]):
                self.assertLess(int(along), 1200)

    def test_a_panel_to_be_tipped_up_wants_the_ceiling(self):
        _, answer = sheet(room(90, extra=LEVEL_FLOOR), panel("allow = '3/8'"))
        self.assertEqual([step["what"] for step in readings(answer)],
                         ['measure from the level line up to the ceiling at the left wall, 12" from the corner, 12" out'])
        _, answer = sheet(room(90, extra=LEVEL_FLOOR), panel("allow = '3/8'").replace("'84'", "'60'"))
        self.assertEqual(readings(answer), [])

    def test_a_room_that_is_measured_asks_for_nothing_more(self):
        ceiling = "\n[ceiling]\nup = [['left', '24', '24', '56']]\n"
        job = Job(room(90, extra=LEVEL_FLOOR + ceiling), panel("allow = '3/8'"))
        status, out, err = job.run(str(TOP / NOOKFIT), "survey", "--sheet", "--json")
        self.assertEqual(err, "")
        self.assertEqual(readings(json.loads(out)), [])
        self.assertEqual(status, 0)

    def test_bad_input_is_bad_input(self):
        with JobFolder(room=WALLS + "colour = 3\n", design=LOOKOUT) as folder:
            self.assertEqual(nookfit("survey", folder, "--sheet").returncode, 2)
        with tempfile.TemporaryDirectory() as folder:
            self.assertEqual(nookfit("survey", folder, "--sheet").returncode, 2)

    def test_units_and_rounding_of_the_page(self):
        with JobFolder(room=WALLS, design=LOOKOUT) as folder:
            page = nookfit("survey", folder, "--sheet", "--units", "mm", "--round", "5 mm").stdout
        self.assertIn("1035 mm up", re.sub(r"\s+", " ", page))  # the ledgers' middle, 40 25/32 in

    def test_the_drawn_sheet_has_the_same_plan(self):
        with JobFolder(room=WALLS, design=LOOKOUT) as folder, tempfile.TemporaryDirectory() as out:
            plan = json.loads(nookfit("survey", folder, "--sheet", "--json").stdout)
            nookfit("sheet", folder, "-o", out)
            page = (pathlib.Path(out) / "measuring.html").read_text(encoding="utf-8")
            text = re.sub(r"\s+", " ", re.sub(r"<[^>]*>", " ", page)).replace("&quot;", '"')
            for step in readings(plan):
                self.assertIn(step["what"], text)


if __name__ == "__main__":
    unittest.main()
