"""Corners made by plain trigonometry, written as job folders: nothing here shares code with the program."""

import json
import math
import pathlib
import subprocess
import tempfile

INCH = 25.4
EXACT = "0.0001 mm"


def exact(mm):
    """A reading known to a tenth of a micrometre."""
    return f'{{ is = "{mm:.9f} mm", sd = "{EXACT}" }}'


def cosine_law(a, b, degrees):
    return math.sqrt(a * a + b * b - 2 * a * b * math.cos(math.radians(degrees)))



def room(degrees=90.0, left="", right="", extra="", board="", line_lean=(0.0, 0.0)):
    """room.toml of a flat corner: exact diagonals at the floor, exact plumb lines on both walls.

    line_lean: mm per mm that each wall comes into the room going up.
    """
    marks = [(36, 48), (48, 36), (60, 60)]
    diagonals = ",\n  ".join(
        f"[{exact(a * INCH)}, {exact(b * INCH)}, {exact(cosine_law(a * INCH, b * INCH, degrees))}]"
        for a, b in marks
    )
    heights = [12 * INCH, 40 * INCH, 88 * INCH]

    def plumb(lean):
        readings = ", ".join(f'["{h:.6f} mm", {exact(60.0 - lean * h)}]' for h in heights)
        return "\n".join(
            f'[[wall.plumb]]\nat = "{at}"\nline = [{readings}]' for at in ("20", "70")
        )

    return f"""title = "exact corner"
units = "inch"
[flatness]
sd = "0"
[tape]
class = "I"
read_to = "1/32"
corner = "block"
[[wall]]
name = "left"
length = "118"
{board}
{left}
{plumb(line_lean[0])}
[[wall]]
name = "right"
length = "96"
{board}
{right}
{plumb(line_lean[1])}
[[corner]]
walls = ["left", "right"]
height = "8"
diagonals = [
  {diagonals}
]
{extra}
"""


LEVEL_FLOOR = "\n".join(
    ["[floor]", "down = ["]
    + [
        f"  ['{wall}', '{along}', '{out}', {exact(40 * INCH)}],"
        for wall, along, out in (("left", 6, 4), ("left", 70, 30), ("right", 70, 6), ("left", 30, 60))
    ]
    + ["]"]
)


class Job:
    """A job folder in a temporary place."""

    def __init__(self, room_text, design_text=None, pieces_text=None):
        self.dir = tempfile.TemporaryDirectory()
        folder = pathlib.Path(self.dir.name)
        (folder / "room.toml").write_text(room_text)
        if design_text:
            (folder / "design.toml").write_text(design_text)
        if pieces_text:
            (folder / "pieces.toml").write_text(pieces_text)
        self.folder = folder

    def run(self, program, command, *options):
        """(exit status, standard output, standard error)"""
        done = subprocess.run(
            [program, command, str(self.folder), *options], capture_output=True, text=True, timeout=60
        )
        return done.returncode, done.stdout, done.stderr

    def json(self, program, command, *options):
        status, out, err = self.run(program, command, "--json", *options)
        if status == 3 or not out:
            raise AssertionError(f"{command}: exit {status}\n{err}")
        return json.loads(out)
