"""What the answers must hold: exit statuses, JSON keys, streams, colors, a page's width."""
import json
import os
import pathlib
import unittest

from program import JOBS, TOP, JobFolder, answer, nookfit, read_terminal

OPENING = ["nookfit", "answer", "job", "verdict", "diagnostics"]
ROOM = ["corners", "walls", "flatness", "readings", "suspects", "uncheckable", "measure_next", "chi2"]
KEYS = {
    "room": OPENING + ROOM,
    "fit": OPENING + ["groups", "clashes", "contacts", "notches", "clearances", "covered", "shows",
                      "floor"],
    "drill": OPENING + ["walls", "parts", "strength", "unreachable"],
    "check": OPENING + ["room", "fit", "drill"],
}
INNER = {
    ("room", "corners"): ["walls", "angle_deg", "angle_sd_deg"],
    ("room", "walls"): ["name", "length_mm", "length_sd_mm", "lean_mm_per_m", "lean_sd_mm_per_m",
                        "hump_mm", "studs"],
    ("room", "readings"): ["id", "given", "value_mm", "sd_mm", "adjusted_mm", "adjusted_sd_mm",
                           "residual_mm", "w", "redundancy", "smallest_slip_mm", "line"],
    ("fit", "groups"): ["name", "x_mm", "y_mm", "z_mm", "turn_deg", "touches"],
    ("fit", "clashes"): ["part", "with", "depth_mm", "sd_mm", "at_mm", "verdict"],
    ("fit", "contacts"): ["part", "edge", "meets", "by", "gap_least_mm", "gap_most_mm", "sd_mm",
                          "chance", "taper_deg", "scribe_mm", "wood_mm", "line_mm", "lines",
                          "square_mm", "after", "verdict"],
    ("fit", "notches"): ["part", "for", "polygon_mm"],
    ("fit", "clearances"): ["part", "from", "least_mm", "sd_mm", "needed_mm", "verdict"],
    ("fit", "covered"): ["part", "behind", "margin_mm", "verdict"],
    ("fit", "floor"): ["part", "shim_mm", "squash_mm"],
    ("drill", "walls"): ["name", "holes"],
    ("drill", "strength"): ["part", "to", "load_n", "capacity_n", "ratio", "mode"],
    ("drill", "unreachable"): ["part", "reason"],
}
HOLE = ["id", "part", "stud", "along_mm", "height_mm", "u_mm", "v_mm", "edge_distance_mm",
        "embedment_mm", "hit_chance", "pilot_mm", "clearance_mm", "shim_mm", "warnings"]
VERDICTS = {"fits": 0, "cannot tell": 1, "does not fit": 1}

THREE_FAULTS = """units = "inch"
[[wall]]
name = "left"
lenght = '118'
[[wall]]
name = "right"
length = '96,5'
wallboard = '-1/2'
"""


class Answers(unittest.TestCase):
    maxDiff = None

    def test_each_json_answer_opens_alike_and_has_its_keys(self):
        for job in JOBS:
            for command, keys in KEYS.items():
                with self.subTest(job=job, command=command):
                    said = answer(command, f"rooms/{job}")
                    self.assertEqual(list(said)[:5], OPENING)
                    self.assertEqual([key for key in keys if key not in said], [])
                    self.assertEqual((said["answer"], said["job"], said["diagnostics"]),
                                     (command, f"rooms/{job}", []))
                    self.assertIn(said["verdict"], VERDICTS)

    def test_each_item_of_the_json_answers_has_its_keys(self):
        said = {command: answer(command, "rooms/lookout") for command in ["room", "fit", "drill"]}
        for (command, name), keys in INNER.items():
            for item in said[command][name]:
                with self.subTest(command=command, name=name):
                    self.assertEqual([key for key in keys if key not in item], [])
        for hole in said["drill"]["walls"][0]["holes"]:
            self.assertEqual([key for key in HOLE if key not in hole], [])
        self.assertGreater(len(said["drill"]["walls"][0]["holes"]), 0)

    def test_a_check_joins_the_answers_that_the_commands_give(self):
        check = answer("check", "rooms/lookout")
        joined = ["room", "fit", "drill", "carry", "safety", "verify"]
        for command in joined:
            self.assertEqual(check[command], answer(command, "rooms/lookout"))
        worst = max((check[c]["verdict"] for c in joined), key=["fits", "cannot tell", "does not fit"].index)
        self.assertEqual(check["verdict"], worst)

    def test_a_check_looks_at_what_is_cut_already(self):
        texts = {name: (TOP / f"rooms/window-bench/{name}.toml").read_text() for name in ("room", "design", "pieces")}
        wrong = answer("verify", "rooms/window-bench")["pieces"]
        first = next(piece["part"] for piece in wrong if piece["verdict"] == "does not fit")
        with JobFolder(**texts) as cut, JobFolder(room=texts["room"], design=texts["design"]) as drawn, \
                JobFolder(**{**texts, "pieces": 'units = "mm"\n'}) as none:
            said = nookfit("check", cut).stdout
            self.assertIn(f"does not fit  {first} as cut: ", said)
            self.assertEqual(answer("check", cut)["verdict"], "does not fit")
            for folder in (drawn, none):
                self.assertNotIn("as cut", nookfit("check", folder).stdout)
                self.assertEqual(answer("check", folder)["verdict"], "cannot tell")
                self.assertNotIn("verify", answer("check", folder))

    def test_the_exit_status_follows_the_verdict_with_and_without_json(self):
        for job in JOBS:
            for command in KEYS:
                with self.subTest(job=job, command=command):
                    run = nookfit(command, f"rooms/{job}", "--json")
                    status = VERDICTS[json.loads(run.stdout)["verdict"]]
                    self.assertEqual((run.returncode, run.stderr), (status, ""))
                    self.assertEqual(nookfit(command, f"rooms/{job}").returncode, status)

    def test_quiet_prints_the_verdict_alone(self):
        run = nookfit("check", "rooms/lookout", "--quiet")
        self.assertEqual(run.stdout, answer("check", "rooms/lookout")["verdict"] + "\n")

    def test_the_job_left_out_is_the_folder_one_is_in(self):
        here = nookfit("check", cwd=TOP / "rooms" / "lookout")
        self.assertEqual(here.stdout, nookfit("check", "rooms/lookout").stdout)

    def test_no_line_of_a_page_is_wider_than_80(self):
        for job in JOBS:
            for command in KEYS:
                for line in nookfit(command, f"rooms/{job}").stdout.splitlines():
                    self.assertLessEqual(len(line), 80, f"{command} {job}: {line}")

    def test_color_comes_only_when_asked_and_changes_no_word(self):
        plain = nookfit("check", "rooms/lookout").stdout
        colored = nookfit("check", "rooms/lookout", "--color", "always").stdout
        self.assertNotIn("\033", plain)
        self.assertIn("\033[31m", colored)
        bare = colored.replace("\033[0m", "")
        for code in ["31", "32", "33"]:
            bare = bare.replace(f"\033[{code}m", "")
        self.assertEqual(bare, plain)
        self.assertNotIn("\033", nookfit("check", "rooms/lookout", "--color", "always",
                                         "--json").stdout)

    def test_on_a_terminal_no_color_and_dumb_terminals_are_honored(self):
        def on_terminal(**env):
            reader, writer = os.openpty()
            nookfit("check", "rooms/lookout", "--quiet", env=env, stdout=writer)
            nookfit("room", "rooms/lookout", env=env, stdout=writer)
            os.close(writer)
            return read_terminal(reader)
        self.assertNotIn(b"\033", on_terminal(NO_COLOR="1"))
        self.assertNotIn(b"\033", on_terminal(TERM="dumb"))

    def test_output_that_cannot_be_written_exits_3(self):
        with open("/dev/full", "w") as full:
            run = nookfit("room", "rooms/lookout", stdout=full)
        self.assertEqual(run.returncode, 3)
        self.assertEqual(run.stderr,
                         "nookfit: standard output: No space left on device [machine]\n")

    def test_the_same_job_gives_the_same_bytes(self):
        self.assertEqual(nookfit("check", "rooms/lookout", "--json").stdout,
                         nookfit("check", "rooms/lookout", "--json").stdout)

    def test_units_and_rounding_are_those_asked_for(self):
        self.assertIn(" mm", nookfit("fit", "rooms/lookout", "--units", "mm").stdout)
        self.assertNotIn('"', nookfit("check", "rooms/lookout", "--units", "mm").stdout)
        self.assertIn('/32"', nookfit("fit", "rooms/lookout", "--round", "1/32").stdout)


class BadInput(unittest.TestCase):
    maxDiff = None

    def test_a_job_that_is_not_there_is_bad_input(self):
        run = nookfit("check", "rooms/nowhere")
        self.assertEqual((run.returncode, run.stdout), (2, ""))
        self.assertEqual(run.stderr,
                         "rooms/nowhere: error: there is no such folder [folder-missing]\n"
                         "help: a job is a folder that holds room.toml and design.toml\n")

    def test_a_check_without_a_design_says_so_and_a_room_does_without(self):
        room = (TOP / "rooms/lookout/room.toml").read_text(encoding="utf-8")
        with JobFolder(room=room) as job:
            run = nookfit("check", job)
            self.assertEqual((run.returncode, run.stdout), (2, ""))
            self.assertEqual(run.stderr,
                             f"{job}/design.toml: error: no such file [no-file]\n"
                             "help: this command needs a design; 'nookfit room' does without\n")
            self.assertLess(nookfit("room", job).returncode, 2)

    def test_all_faults_of_a_file_are_told_at_once_and_nothing_stands_on_standard_output(self):
        with JobFolder(room=THREE_FAULTS) as job:
            run = nookfit("room", job)
            self.assertEqual((run.returncode, run.stdout), (2, ""))
            self.assertEqual(run.stderr.count(": error: "), 3)
            self.assertIn(f"{job}/room.toml:4:1: error: ", run.stderr)
            self.assertIn("length", run.stderr.split("help:")[1].splitlines()[0])

    def test_with_json_a_misused_command_names_the_job_as_typed(self):
        for words, job in ((("rooms/lookout", "--nonsense"), "rooms/lookout"), (("--nonsense",), ".")):
            said = nookfit("fit", *words, "--json")
            self.assertEqual((said.returncode, json.loads(said.stdout)["job"]), (2, job))

    def test_with_json_the_same_faults_stand_in_the_answer(self):
        with JobFolder(room=THREE_FAULTS) as job:
            run = nookfit("room", job, "--json")
            said = json.loads(run.stdout)
            self.assertEqual((run.returncode, said["verdict"]), (2, "bad input"))
            self.assertEqual(list(said)[:5], OPENING)
            self.assertEqual([(d["line"], list(d)) for d in said["diagnostics"]],
                             [(n, ["file", "line", "column", "what", "code", "help"])
                              for n in [4, 7, 8]])
            self.assertEqual(run.stderr.count(": error: "), 3)

    def test_no_job_file_is_changed_by_an_answer(self):
        before = {p: p.read_bytes() for p in pathlib.Path(TOP, "rooms").rglob("*.toml")}
        for command in KEYS:
            nookfit(command, "rooms/lookout")
        self.assertEqual(before, {p: p.read_bytes() for p in before})


class Foretold(unittest.TestCase):
    def test_a_diagonal_is_foretold_with_its_plus_or_minus(self):
        said = answer("room", "rooms/lookout", "--expect", "left:36", "right:48", "height:41")
        self.assertLess(abs(said["expect"]["value_mm"] - 60.6 * 25.4), 3)
        self.assertTrue(0 < said["expect"]["sd_mm"] < 1.5)
        text = nookfit("room", "rooms/lookout", "--expect", "left:36", "right:48", "height:41").stdout
        self.assertTrue(" ".join(text.split()).startswith(
            'Straight from 36" along the left wall to 48" along the right wall, both 41" up: 60 '))

    def test_lengths_read_like_those_of_a_job_and_the_walls_may_stand_in_any_order(self):
        one = answer("room", "rooms/lookout", "--expect", "left:36", "right:48", "height:41")
        two = answer("room", "rooms/lookout", "--expect", "right:4'", "height:1.0414 m", "left:914.4 mm")
        for key, value in one["expect"].items():
            self.assertAlmostEqual(value, two["expect"][key], places=9)

    def test_a_distance_of_two_marks_is_foretold(self):
        room = """units = "mm"
[[mark]]
name = "a"
[[mark]]
name = "b"
[[mark]]
name = "c"
[[span]]
between = ["a", "b"]
is = ['3000', '3001']
[[span]]
between = ["b", "c"]
is = '4000'
[[span]]
between = ["a", "c"]
is = '5000'
"""
        with JobFolder(room=room) as job:
            said = answer("room", job, "--expect", "mark:a", "mark:c")
            self.assertLess(abs(said["expect"]["value_mm"] - 5000), 0.5)
            self.assertTrue(0 < said["expect"]["sd_mm"] < 2)


if __name__ == "__main__":
    unittest.main()
