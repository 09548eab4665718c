"""Huge, broken and odd jobs through the whole program: an answer or a clear error, in bounded time and
memory, never a crash."""
import math
import os
import pathlib
import resource
import shutil
import subprocess
import tempfile
import unittest

from program import NOOKFIT, TOP

CPU_SECONDS, MEGABYTES = 60, 1500   # of one run
TWO_WALLS = """units = "mm"
[[wall]]
name = "left"
{wall}
[[wall]]
name = "right"
[[corner]]
walls = ["left", "right"]
height = '500'
diagonals = [['900', '1200', '1500'], ['600', '800', '1001']{diagonals}]
[floor]
down = [['left', '100', '100', '1000'], ['left', '1000', '100', '1000'],
        ['right', '1000', '100', '1000']]
"""
PANEL = """units = "mm"
corner = ["left", "right"]
[stock.ply]
kind = "plywood"
thickness = '18'
sheet = ['1220', '2440']
[[part]]
name = "panel"
stock = "ply"
shape = {{ {shape} }}
place = {{ at = ['0', '900', '0'], u = "+x", v = "+z" }}
[[contact]]
part = "panel"
edge = "left"
meets = "right wall"
"""
PLAIN = PANEL.format(shape="size = ['900', '700']")
SANITIZED = "sanitized" in NOOKFIT   # its shadow memory is no memory in use


def bounds():
    resource.setrlimit(resource.RLIMIT_CPU, (CPU_SECONDS, CPU_SECONDS))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
    if not SANITIZED:
        resource.setrlimit(resource.RLIMIT_AS, (MEGABYTES << 20, MEGABYTES << 20))


def room(wall="", diagonals=""):
    return TWO_WALLS.format(wall=wall, diagonals=diagonals)


def strings(count):
    """Readings of a string, a thousand a string."""
    text = ""
    for first in range(0, count, 1000):
        line = ", ".join(f"['{100 + 2.5 * i:.1f}', '{50 + i * 7 % 5 / 10:.1f}']"
                         for i in range(min(1000, count - first)))
        text += f"[[wall.string]]\nheight = '{300 + first * 0.015:.0f}'\nline = [{line}]\n"
    return text


def waved_outline(count):
    points = [(0, 0), (900, 0)] + [
        (900 * i / (count - 3), 700 + 20 * math.sin(i * 128 / count)) for i in range(count - 2)][::-1]
    return "points = [" + ", ".join(f"['{u:.3f}', '{v:.3f}']" for u, v in points) + "]"


class Hostile(unittest.TestCase):
    def setUp(self):
        self.temporary = tempfile.TemporaryDirectory()
        self.job = pathlib.Path(self.temporary.name)
        self.addCleanup(self.temporary.cleanup)

    def put(self, name, data):
        if isinstance(data, str):
            data = data.encode()
        (self.job / f"{name}.toml").write_bytes(data)

    def run_bounded(self, *words):
        """A run within its bounds, that neither crashed nor found a fault of the program's own."""
        run = subprocess.run([str(TOP / NOOKFIT), *words], capture_output=True, preexec_fn=bounds,
                             cwd=TOP, timeout=300)
        self.assertIn(run.returncode, (0, 1, 2), run.stderr[-2000:])
        return run

    def refused(self, code, *words):
        run = self.run_bounded(*(words or ("check", str(self.job))))
        self.assertEqual((run.returncode, run.stdout), (2, b""), run.stdout[:200])
        said = run.stderr.decode("utf-8")
        self.assertIn(f"[{code}]", said)
        self.assertLess(len(said), 500_000)
        return said

    def answered(self, command):
        run = self.run_bounded(command, str(self.job))
        self.assertIn(run.returncode, (0, 1), run.stderr)
        self.assertGreater(len(run.stdout), 100)

    def test_a_hundred_thousand_readings_are_refused(self):
        self.put("room", room(strings(100_000)))
        self.refused("too-many-readings")

    def test_six_thousand_readings_less_a_few_are_answered(self):
        self.put("room", room(strings(5_980)))
        self.answered("room")

    def test_five_hundred_diagonals_are_answered(self):
        self.put("room", room(diagonals="".join(
            f", ['{300 + .9 * i:.1f}', '{400 + .7 * i:.1f}', "
            f"'{math.hypot(300 + .9 * i, 400 + .7 * i):.1f}']" for i in range(498))))
        self.answered("room")

    def test_a_hundred_marks_are_answered(self):
        at = [(math.cos(i) * (i + 5) * 30, math.sin(i) * (i + 5) * 30) for i in range(100)]
        text = 'units = "mm"\n' + "".join(f"[[mark]]\nname = 'm{i}'\n" for i in range(100))
        for i in range(100):
            for j in {(i + k) % 100 for k in (1, 2, 3)}:
                text += (f"[[span]]\nbetween = ['m{i}', 'm{j}']\n"
                         f"is = '{math.dist(at[i], at[j]):.1f}'\n")
        self.put("room", text)
        self.answered("room")

    def test_outlines_of_ten_thousand_points_are_answered(self):
        self.put("room", room())
        self.put("design", PANEL.format(shape=waved_outline(10_000)))
        for command in ["fit", "check", "cut"]:
            with self.subTest(command=command):
                self.answered(command)

    def test_deep_nesting_is_refused(self):
        for text in ["a = " + "[" * 100_000, "[a" + ".a" * 100_000 + "]", "a = " + "{a=" * 100_000]:
            self.put("room", text)
            self.refused("nested-too-deep")

    def test_figures_that_are_none_are_refused(self):
        for figure in ["nan", "inf", "-inf", "1e308", "'1e308'", "'nan'", "99999999999999999999",
                       "'" + "9" * 10_000 + "'", "'-0 1/0'", "'1/0'"]:
            with self.subTest(figure=figure[:30]):
                self.put("room", f"units = 'mm'\n[[wall]]\nname = 'a'\nlength = {figure}\n")
                run = self.run_bounded("room", str(self.job))
                self.assertEqual(run.returncode, 2, figure[:30])
                self.assertRegex(run.stderr.decode(), r"room\.toml:4:\d+: error: .* \[[a-z0-9-]+\]\n")

    def test_what_is_no_text_is_refused(self):
        for data in [b"\xff\xfe\x00", b"title = '\xc3\x28'\n", b"\x00" * 1000, bytes(range(256)),
                     "title = 'x'\n".encode("utf-16")]:
            with self.subTest(data=data[:8]):
                self.put("room", data)
                run = self.run_bounded("room", str(self.job))
                self.assertEqual(run.returncode, 2)
                self.assertIn(b"room.toml", run.stderr)

    def test_line_ends_of_another_system_and_a_byte_order_mark_change_nothing(self):
        self.put("room", room())
        plain = self.run_bounded("room", str(self.job))
        for data in [room().replace("\n", "\r\n"), "\ufeff" + room(),
                     "\ufeff" + room().replace("\n", "\r\n")]:
            self.put("room", data)
            again = self.run_bounded("room", str(self.job))
            self.assertEqual((again.returncode, again.stdout, again.stderr),
                             (plain.returncode, plain.stdout, plain.stderr))

    def test_a_huge_file_is_refused(self):
        self.put("room", b"#" * (9 << 20))
        self.refused("file-too-large")

    def test_what_is_no_file_is_refused_at_once(self):
        self.put("design", PLAIN)
        file = self.job / "room.toml"
        for code, make in [("not-a-file", file.mkdir), ("not-a-file", lambda: os.mkfifo(file)),
                           ("not-a-file", lambda: file.symlink_to("/dev/zero")),
                           ("not-a-file", lambda: file.symlink_to("/dev/null")),
                           ("file-unreadable", lambda: file.symlink_to("nowhere.toml")),
                           ("file-unreadable", lambda: file.symlink_to("room.toml")),
                           ("file-missing", lambda: None)]:
            with self.subTest(code=code):
                make()
                self.refused(code)
                if file.is_dir() and not file.is_symlink():
                    file.rmdir()
                else:
                    file.unlink(missing_ok=True)

    def test_a_link_to_a_file_is_read(self):
        self.put("elsewhere", room())
        (self.job / "room.toml").symlink_to("elsewhere.toml")
        self.answered("room")

    def test_a_job_that_is_no_folder_is_refused(self):
        self.refused("not-a-folder", "check", "/dev/null")
        self.refused("folder-missing", "check", str(self.job / "nowhere"))
        self.refused("folder-missing", "check", "x" * 5000)

    def test_a_device_that_takes_nothing_is_the_machines_fault(self):
        self.put("room", room())
        with open("/dev/full", "wb") as full:
            run = subprocess.run([str(TOP / NOOKFIT), "room", str(self.job)], stdout=full,
                                 stderr=subprocess.PIPE, cwd=TOP, timeout=60)
        self.assertEqual(run.returncode, 3)
        self.assertIn(b"standard output", run.stderr)

    def test_a_folder_that_cannot_be_written_is_left_as_it_was(self):
        self.put("room", room())
        self.put("design", PLAIN)
        for place in ["/dev/null/sheets", "/proc/sheets"]:
            run = subprocess.run([str(TOP / NOOKFIT), "sheet", str(self.job), "-o", place],
                                 capture_output=True, cwd=TOP, timeout=60)
            self.assertEqual(run.returncode, 3, run.stderr)
            self.assertFalse(pathlib.Path(place).exists())


class Slips(unittest.TestCase):
    """A figure ten or twenty-five times too large turns walls round; there is an answer all the same."""

    def test_a_point_or_a_unit_too_many(self):
        room = (TOP / "rooms/window-bench/room.toml").read_text()
        for right, wrong in [("['999', '999']", "['9990', '999']"), ("['612', '612']", "['15544.8', '612']"),
                             ("['995', '994']", "['25273', '994']"), ("['997', '998']", "['997', '25349.2']")]:
            self.assertIn(right, room)
            with self.subTest(wrong), tempfile.TemporaryDirectory() as folder:
                shutil.copytree(TOP / "rooms/window-bench", folder, dirs_exist_ok=True)
                pathlib.Path(folder, "room.toml").write_text(room.replace(right, wrong, 1))
                done = subprocess.run([str(TOP / NOOKFIT), "check", folder], capture_output=True, text=True,
                                      timeout=120)
                self.assertEqual((done.returncode, done.stderr), (1, ""))
                self.assertTrue(done.stdout.splitlines()[2].startswith("Readings that disagree"))


if __name__ == "__main__":
    unittest.main()
