"""Guided entry: nothing accepted is lost, whatever happens to the program, the disk or the file."""

import json
import os
import pathlib
import random
import re
import select
import shutil
import signal
import subprocess
import tempfile
import time
import tomllib
import unittest

from program import NOOKFIT, TOP

PROGRAM = str(TOP / NOOKFIT)
# A new file's first questions, then the walk: lengths and boards, floor, diagonals.
OPENING = ["inch", "block", "left, right", "118 3/8", "5 1/4, 9/16", "96 9/16", "skip"]
FLOOR = ["40 1/8", "40 1/16", "40 3/16", "40 1/8"]


def enter(folder, lines, *options):
    return subprocess.run([PROGRAM, "survey", str(folder), *options], input="\n".join(lines) + "\n",
                          capture_output=True, text=True, timeout=300)


def room_of(folder):
    return tomllib.loads(pathlib.Path(folder, "room.toml").read_text(encoding="utf-8"))


class Entry(unittest.TestCase):
    def setUp(self):
        self.holder = tempfile.TemporaryDirectory()
        self.folder = pathlib.Path(self.holder.name, "job")

    def tearDown(self):
        self.holder.cleanup()

    def test_answers_stand_in_the_file_as_typed(self):
        done = enter(self.folder, OPENING + FLOOR + ["60 5/8 shy", "done"])
        self.assertEqual(done.returncode, 1, done.stderr)  # the room cannot be told yet
        room = room_of(self.folder)
        self.assertEqual(room["wall"][0]["length"], "118 3/8")
        self.assertEqual([drop[3] for drop in room["floor"]["down"]], FLOOR)
        self.assertEqual(room["corner"][0]["diagonals"][0][2], "60 5/8 shy")
        self.assertIn("height", room["corner"][0])

    def test_an_entry_goes_on_where_it_was_broken_off(self):
        enter(self.folder, OPENING + FLOOR[:2])
        before = (self.folder / "room.toml").read_text()
        done = enter(self.folder, ["skip"] + FLOOR[2:] + ["done"])
        self.assertIn("Level line down", done.stdout)
        self.assertEqual([drop[3] for drop in room_of(self.folder)["floor"]["down"]], FLOOR)
        for line in before.splitlines():
            if not line.startswith("down"):
                self.assertIn(line, (self.folder / "room.toml").read_text())

    def test_comments_and_order_of_a_file_by_hand_survive_byte_for_byte(self):
        self.folder.mkdir()
        text = ('# by hand\r\nunits = "inch"   # the tape\r\n[tape]\r\ncorner = "bent"\r\n'
                '[[wall]]\r\nname="left"\r\n  length =  "118"  # odd spaces\r\n'
                '[[wall]]\r\nname = "right"\r\n\r\n# the end\r\n')
        (self.folder / "room.toml").write_bytes(text.encode())
        enter(self.folder, ["skip", "96 9/16", "done"])
        after = (self.folder / "room.toml").read_bytes().decode()
        added = [line for line in after.split("\r\n") if line not in text.split("\r\n")]
        self.assertEqual(added, ["length = '96 9/16'"])
        kept = [line for line in after.split("\r\n") if line in text.split("\r\n")]
        self.assertEqual(kept, text.split("\r\n"))

    def test_back_again_and_a_refused_answer(self):
        done = enter(self.folder, OPENING[:3] + ["118 3/8", "back", "41,5", "117", "again", "117 1/16", "done"])
        self.assertIn("it was 118 3/8", done.stdout)
        self.assertIn("not taken", done.stdout)
        self.assertEqual(room_of(self.folder)["wall"][0]["length"], ["117", "117 1/16"])

    def test_what_stands_out_of_a_wall_is_taken_with_how_far(self):
        shutil.copytree(TOP / "rooms/corner-desk", self.folder)
        asked = enter(self.folder, ["skip"] * 40 + ["done"]).stdout.split("\n> ")
        before = next(k for k, text in enumerate(asked) if "Outlet, switch" in text)
        known = len(room_of(self.folder)["wall"][0]["obstacle"])
        for answer, wanted in [("heater 50, 74, 0, 24, 6", "6"), ("outlet 20, 22, 12, 16", None)]:
            enter(self.folder, ["skip"] * before + [answer, "done"])
            known += 1
            boxes = room_of(self.folder)["wall"][0]["obstacle"]
            self.assertEqual((len(boxes), boxes[-1].get("out")), (known, wanted))
        refused = enter(self.folder, ["skip"] * before + ["heater 50, 74, 0, 24, 6, 8", "done"])
        self.assertIn("how far it stands out of the wall", " ".join(refused.stdout.split()))

    def test_a_reading_that_disagrees_is_asked_again_and_kept_struck(self):
        # 60 5/8 over 36 and 48 is a corner of about 91.2 degrees: 48 and 36 give the same again.
        done = enter(self.folder, OPENING + FLOOR + ["60 5/8", "59 5/8", "60 5/8 shy", "done"])
        self.assertRegex(done.stdout, r'59 5/8"; expected 60 [^,]*", give or take')
        straight = room_of(self.folder)["corner"][0]["diagonals"][1][2]
        self.assertEqual((straight[0]["is"], straight[0]["struck"]), ("59 5/8", True))
        self.assertEqual(straight[1], "60 5/8 shy")

    def test_each_new_reading_is_doubted_until_it_agrees_or_is_kept(self):
        done = enter(self.folder, OPENING + FLOOR + ["60 5/8", "59 5/8", "58 5/8", "64", "60 5/8 shy", "done"])
        self.assertEqual(done.stdout.count("read again?"), 3)
        straight = room_of(self.folder)["corner"][0]["diagonals"][1][2]
        struck = [reading["is"] for reading in straight if isinstance(reading, dict)]
        self.assertEqual((struck, straight[-1]), (["59 5/8", "58 5/8", "64"], "60 5/8 shy"))

    def test_a_doubted_reading_can_be_kept(self):
        enter(self.folder, OPENING + FLOOR + ["60 5/8", "59 5/8", "keep", "done"])
        self.assertEqual(room_of(self.folder)["corner"][0]["diagonals"][1][2], "59 5/8")

    def test_a_question_mark_draws_and_pages_keep_80_columns(self):
        done = enter(self.folder, OPENING + ["?"] + FLOOR + ["?", "done"])
        self.assertIn("level line", done.stdout)
        self.assertLessEqual(max(map(len, done.stdout.splitlines())), 80)

    def test_every_kind_of_reading_can_be_typed_at_any_question(self):
        lines = ["plumb left, 24, 8, 2 1/16, 48, 2 1/16, 90, 2 1/16", "string left, 60, 3, 1, 60, 1, 115, 1",
                 "straightedge right, 40, 3, 0, 27, 1/16, 51, 0", "level right, 70, 8, 56, 1/16 bottom",
                 "diagonal left/right, 68, 36, 48, 60", "square left/right, 8, 24, 0 heel", "angle left/right, 40, 12, 90",
                 "tape left/right, nail in the sill, 101 1/4", "tape nail in the sill, right wall 60, 81 1/2",
                 "ceiling left, 6, 4, 55 7/8", "covering carpet, 5/8", "squash 180 lb, 3, 1 1/4, 3/8",
                 "turn hall, 36, 38, 95"]
        enter(self.folder, OPENING + FLOOR)
        done = enter(self.folder, lines + ["done"])
        self.assertNotIn("not taken", done.stdout)
        self.assertEqual(done.stdout.count("  taken\n"), len(lines))
        room = room_of(self.folder)
        left, right = room["wall"]
        self.assertEqual(left["plumb"][0]["line"][2], ["90", "2 1/16"])
        self.assertEqual(left["string"][0]["height"], "60")
        self.assertEqual(right["straightedge"][0]["gaps"][1], ["27", "1/16"])
        self.assertEqual(right["level"][0]["gap_at"], "bottom")
        corners = {key: corner for corner in room["corner"] for key in corner}
        self.assertEqual(corners["square"]["square"][0]["at"], "heel")
        self.assertEqual(corners["angles"]["angles"][0], {"is": "90", "blade": "12"})
        self.assertEqual(corners["diagonals"]["diagonals"], [["36", "48", "60"]])
        self.assertEqual(room["mark"], [{"name": "nail in the sill"}])
        self.assertEqual(room["span"][1]["between"], ["nail in the sill", {"wall": "right", "along": "60"}])
        self.assertEqual(room["ceiling"]["up"], [["left", "6", "4", "55 7/8"]])
        self.assertEqual(room["floor"]["covering"], {"kind": "carpet", "thickness": "5/8"})
        self.assertEqual(room["floor"]["squash"][0]["by"], "3/8")
        self.assertEqual(room["access"]["turns"][0]["name"], "hall")
        done = enter(self.folder, ["blocking left, 15 1/4, 31 1/4, 46, 49 1/2", "square left/right, 8", "nonsense left, 4"])
        self.assertEqual(done.stdout.count("not taken"), 3)  # no stud of that wall yet; too few numbers; no such kind
        self.assertEqual(room_of(self.folder), room)

    def test_blocking_stands_with_the_studs(self):
        enter(self.folder, OPENING + ["skip"] * 30 + ["done"])
        text = (self.folder / "room.toml").read_text()
        text = text.replace("name = 'left'\n", "name = 'left'\nstuds = { found = [{ centre = '15', by = 'nail' }] }\n")
        (self.folder / "room.toml").write_text(text)
        done = enter(self.folder, ["blocking left, 15 1/4, 31 1/4, 46, 49 1/2", "blocking left, 31 1/4, 47, 46, 49 1/2", "done"])
        self.assertEqual(done.stdout.count("  taken\n"), 2)
        blocking = room_of(self.folder)["wall"][0]["studs"]["blocking"]
        self.assertEqual([entry["along"][0] for entry in blocking], ["15 1/4", "31 1/4"])

    def test_a_doubted_line_of_another_kind_is_kept_or_left_out_aloud(self):
        enter(self.folder, OPENING + FLOOR + ["60"] * 2 + ["done"])
        wrong = "diagonal left/right, 39, 60, 60, 83 7/8"
        done = enter(self.folder, [wrong, "84 7/8", "done"])
        self.assertIn("read again?", done.stdout)
        self.assertIn("left out: " + wrong, done.stdout)
        self.assertNotIn("83 7/8", (self.folder / "room.toml").read_text())
        done = enter(self.folder, [wrong, "keep", "done"])
        self.assertIn("83 7/8", (self.folder / "room.toml").read_text())

    def test_an_entry_left_at_once_leaves_no_folder_behind(self):
        done = enter(self.folder, ["done"])
        self.assertEqual(done.returncode, 2)
        self.assertFalse(self.folder.exists())
        self.folder.mkdir()
        enter(self.folder, ["done"])
        self.assertTrue(self.folder.is_dir(), "a folder that stood before stays")

    def test_a_new_alcove_is_asked_for_all_that_it_needs(self):
        asked = enter(self.folder, ["mm", "case", "left, back, right", "612", "skip", "1202", "skip", "607", "skip"]
                      + ["1020", "1021", "1020", "1019"] + ["skip"] * 80).stdout
        for words in ("back wall, from corner to corner", "450 along the left wall to one 600 along the back wall",
                      "300 along the back wall to one 400 along the right wall", "Across from the left to the right wall",
                      "Level held plumb on the back wall", "Studs of the right wall", "A door on the way in",
                      "Anything more"):
            self.assertIn(words, " ".join(asked.split()))
        # What is asked is what the room needs: answered, nothing blocks it.
        self.folder = pathlib.Path(self.holder.name, "answered")
        enter(self.folder, ["mm", "case", "left, back, right", "612", "skip", "1202", "skip", "607", "skip"]
              + ["1020", "1021", "1020", "1019", "750", "750", "500", "500", "707", "1200", "done"])
        answer = json.loads(subprocess.run([PROGRAM, "room", str(self.folder), "--json"], capture_output=True,
                                           text=True, timeout=60).stdout)
        self.assertFalse(any(missing["blocks"] for missing in answer["missing"]), answer["missing"])

    def test_every_question_has_a_sketch(self):
        walk = ["inch", "block", "left, right", "118 3/8", "skip", "96 9/16", "skip"] + FLOOR
        lines = [line for answer in walk + ["skip"] * 40 for line in ("?", answer)]
        said = enter(self.folder, lines).stdout
        for after in said.split("> ")[1:]:
            if after.startswith("\n\n"):
                self.fail("nothing to see: " + after[:100])

    def test_two_entries_refuse_each_other(self):
        self.folder.mkdir()
        first = subprocess.Popen([PROGRAM, "survey", str(self.folder)], stdin=subprocess.PIPE,
                                 stdout=subprocess.PIPE, text=True)
        self.addCleanup(first.stdout.close)
        self.assertIn("which unit", self.heard(first, "which unit"))
        second = enter(self.folder, ["inch"])
        self.assertEqual(second.returncode, 2)
        self.assertIn("[entry-open]", second.stderr)
        first.communicate("inch\ndone\n")
        self.assertEqual(room_of(self.folder)["units"], "inch")

    def heard(self, process, what):
        text = ""
        while what not in text and select.select([process.stdout], [], [], 30)[0]:
            got = os.read(process.stdout.fileno(), 4096).decode()
            if not got:
                break
            text += got
        return text

    def test_kill_at_200_random_moments_loses_no_accepted_reading(self):
        chance = random.Random(20261)
        lines = OPENING + FLOOR
        for _ in range(200):
            shutil.rmtree(self.folder, ignore_errors=True)
            process = subprocess.Popen([PROGRAM, "survey", str(self.folder)], stdin=subprocess.PIPE,
                                       stdout=subprocess.PIPE)
            stop = time.monotonic() + chance.uniform(0, 0.06)
            process.stdin.write(("\n".join(lines) + "\n").encode())
            process.stdin.flush()
            while time.monotonic() < stop:
                time.sleep(0.001)
            process.send_signal(signal.SIGKILL)
            said = process.communicate()[0].decode()
            # Each prompt after the first says that the answer before it was accepted.
            accepted = max(said.count("\n> ") - 1, 0)
            file = self.folder / "room.toml"
            self.check_holds(file.read_text() if file.exists() else "", lines[:accepted])

    def check_holds(self, text, answers):
        tomllib.loads(text)
        for answer in answers:
            for part in [] if answer == "skip" else answer.split(", "):
                self.assertRegex(text, re.escape(part))

    def test_a_full_disk_and_a_folder_without_leave_keep_the_old_file_whole(self):
        enter(self.folder, OPENING)
        old = (self.folder / "room.toml").read_bytes()
        limited = subprocess.run(["sh", "-c", 'ulimit -f 0; exec "$0" survey "$1"', PROGRAM, str(self.folder)],
                                 input="skip\n" + FLOOR[0] + "\n", capture_output=True, text=True, timeout=60)
        self.assertNotEqual(limited.returncode, 0)
        self.assertEqual((self.folder / "room.toml").read_bytes(), old)
        full = self.on_full_disk(old)
        if full:
            self.assertEqual(full.returncode, 3, full.stderr)
            self.assertIn("cannot write", full.stderr)

    def on_full_disk(self, old):
        """The run on a file system of two pages; None where this machine lets nobody mount one."""
        mount = pathlib.Path(self.holder.name, "small")
        mount.mkdir()
        if subprocess.run(["mount", "-t", "tmpfs", "-o", "size=8k", "none", str(mount)], capture_output=True).returncode:
            return None
        try:
            (mount / "room.toml").write_bytes(old)
            (mount / "filler").write_bytes(b"x" * 4096)
            done = enter(mount, ["skip", FLOOR[0]])
            self.assertEqual((mount / "room.toml").read_bytes(), old)
            subprocess.run(["mount", "-o", "remount,ro", str(mount)], check=True)
            refused = enter(mount, ["skip", FLOOR[0]])
            self.assertEqual(refused.returncode, 3)
            self.assertEqual((mount / "room.toml").read_bytes(), old)
            return done
        finally:
            subprocess.run(["umount", str(mount)], check=True)


if __name__ == "__main__":
    unittest.main()
