"""Guided entry: nothing accepted is lost, whatever happens to the program, the disk or the file."""

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

    def test_a_reading_that_disagrees_is_asked_again_and_kept_struck(self):
        # 60 5/8 over 36 and 48 is a corner of about 91.2 degrees: 48 and 36 give the same again.
        done = enter(self.folder, OPENING + FLOOR + ["60 5/8", "59 5/8", "60 5/8 shy", "done"])
        self.assertRegex(done.stdout, r'59 5/8"; expected 60 [^,]*", give or take')
        straight = room_of(self.folder)["corner"][0]["diagonals"][1][2]
        self.assertEqual((straight[0]["is"], straight[0]["struck"]), ("59 5/8", True))
        self.assertEqual(straight[1], "60 5/8 shy")

    def test_a_doubted_reading_can_be_kept(self):
        enter(self.folder, OPENING + FLOOR + ["60 5/8", "59 5/8", "keep", "done"])
        self.assertEqual(room_of(self.folder)["corner"][0]["diagonals"][1][2], "59 5/8")

    def test_a_question_mark_draws_and_pages_keep_80_columns(self):
        done = enter(self.folder, OPENING + ["?"] + FLOOR + ["?", "done"])
        self.assertIn("level line", done.stdout)
        self.assertLessEqual(max(map(len, done.stdout.splitlines())), 80)

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
