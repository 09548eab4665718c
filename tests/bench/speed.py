"""Runs the benchmarks and writes docs/speed.md: `python3 tests/bench/speed.py [--keep]`, --keep only
prints. Wants the targets nookfit and benchmarks of build/release."""
import argparse
import json
import math
import os
import pathlib
import re
import statistics
import subprocess

TOP = pathlib.Path(__file__).resolve().parents[2]
BUILD = TOP / "build/release"
NOOKFIT = BUILD / "src/nookfit"
JOBS = ["lookout", "window-bench", "corner-desk"]
REPETITIONS = 5
ROUNDS = 15   # of whole-process runs, every program once a round


def spent(words):
    """(user + system ms, peak MB) of one cold process."""
    pid = os.posix_spawn(words[0], words, {"PATH": "/usr/bin:/bin", "LC_ALL": "C.UTF-8"},
                         file_actions=[(os.POSIX_SPAWN_OPEN, 1, "/dev/null", os.O_WRONLY, 0)])
    _, status, usage = os.wait4(pid, 0)
    assert os.waitstatus_to_exitcode(status) <= 1, words
    return (usage.ru_utime + usage.ru_stime) * 1000, usage.ru_maxrss / 1024


def processes():
    """What each command takes, median over rounds in which all take turns."""
    programs = {"empty": [str(BUILD / "tests/bench/empty_program")],
                "start": [str(NOOKFIT), "--version"]}
    for job in JOBS:
        for command in ["check", "room", "fit", "drill", "carry", "safety"]:
            programs[command, job] = [str(NOOKFIT), command, str(TOP / "rooms" / job)]
    taken = {name: [] for name in programs}
    for _ in range(ROUNDS):
        for name, words in programs.items():
            taken[name].append(spent(words))
    return {name: (statistics.median(ms for ms, _ in runs), max(mb for _, mb in runs))
            for name, runs in taken.items()}


def bench(name, pattern="."):
    """name of each benchmark -> its row, the medians of rounds in which all take turns; CPU ms."""
    run = subprocess.run([str(BUILD / f"tests/bench/bench_{name}"), f"--benchmark_filter={pattern}",
                          "--benchmark_min_time=0.2", f"--benchmark_repetitions={REPETITIONS}",
                          "--benchmark_enable_random_interleaving=true",
                          "--benchmark_report_aggregates_only=true", "--benchmark_format=json"],
                         capture_output=True, text=True, check=True)
    rows = json.loads(run.stdout)["benchmarks"]
    return {row["run_name"]: row for row in rows if row["aggregate_name"] == "median"}


def growth(rows, name, small, large):
    """The exponent of growth from one size to another."""
    return (math.log(rows[f"{name}/{large}"]["cpu_time"] / rows[f"{name}/{small}"]["cpu_time"]) /
            math.log(large / small))


def aim(holds):
    return "met" if holds else "**missed**"


def table(head, rows):
    lines = [head, ["---"] * len(head), *rows]
    return "".join("| " + " | ".join(str(cell) for cell in line) + " |\n" for line in lines) + "\n"


def ms(value):
    return f"{value:.0f}" if value >= 99.5 else f"{value:.3g}"


def cold():
    taken = processes()
    empty = taken["empty"][0]
    text = ("## Whole programs\n\nUser and system time of one cold process, the median of "
            f"{ROUNDS} rounds in which all programs take turns; peak memory is the largest.\n\n")
    rows = [["an empty C++ program", ms(empty), "1", "", ""],
            ["`nookfit --version`", ms(taken["start"][0]), f"{taken['start'][0] / empty:.1f}", "", ""]]
    for job in JOBS:
        time, peak = taken["check", job]
        met = time <= 20 * empty and time < 60 and peak < 64
        rows.append([f"`check rooms/{job}`", ms(time), f"{time / empty:.1f}", f"{peak:.0f}", aim(met)])
    text += table(["program", "ms", "times the empty one", "peak MB",
                   "aim: 20 times, 60 ms, 64 MB"], rows)
    text += "Its parts, each as a command by itself (ms; all but `room` work out room and fit too):\n\n"
    parts = ["room", "fit", "drill", "carry", "safety"]
    return text + table(["job", *parts],
                        [[job, *(ms(taken[part, job][0]) for part in parts)] for job in JOBS])


def adjustment():
    rows = bench("adjust")
    sizes = [50, 100, 250, 500, 1000, 2000, 5000]
    up = growth(rows, "adjustment", 500, 5000)
    return ("## The adjustment\n\n" +
            table(["readings", *sizes],
                  [["ms", *(ms(rows[f"adjustment/{n}"]["cpu_time"]) for n in sizes)]]) +
            f"Aim: 500 readings under 50 ms: {aim(rows['adjustment/500']['cpu_time'] < 50)}. Growth at "
            f"most quadratic to 5,000: n^{up:.2f} from 500 on, {aim(up <= 2)}.\n\n")


def fit():
    rows = bench("fit")
    pieces, points = [5, 20, 50, 100, 200, 500], [10, 100, 1000, 3000, 10000]
    by_pieces, by_points = growth(rows, "pieces", 50, 500), growth(rows, "points", 1000, 10000)
    return ("## The fit\n\nWith 400 drawn rooms. Cleats on a wall, each by itself, and one panel with a "
            "wave cut into an edge.\n\n" +
            table(["pieces", *pieces], [["ms", *(ms(rows[f"pieces/{n}"]["cpu_time"]) for n in pieces)]]) +
            table(["points of the outline", *points],
                  [["ms", *(ms(rows[f"points/{n}"]["cpu_time"]) for n in points)]]) +
            f"Aim: growth at most n^1.2. Pieces, 50 to 500: n^{by_pieces:.2f}, {aim(by_pieces <= 1.2)}. "
            f"Points, 1,000 to 10,000: n^{by_points:.2f}, {aim(by_points <= 1.2)}.\n\n")


def notch():
    rows = bench("notch")
    time = {name: row["cpu_time"] for name, row in rows.items()}
    exact, outline = rows["cells"]["exact"], rows["cells"]["outline"]
    off = max(abs(rows[name]["exact"] - exact) for name in ["corefinement", "nef"]) / outline
    grid = abs(rows["cells"]["area"] - exact) / outline
    to = {name: time[name] / time["cells"] for name in time}
    return ("## The exact notch\n\nA panel against a bent wall of 1,000 triangles: convex prisms cut by "
            "the panel's faces and united in one exact 2D Boolean, against CGAL's 3D Booleans of the "
            "closed wall and the panel, alone and with the outline made from what they share. All are "
            "built without CGAL's checks of its own work.\n\n" +
            table(["way", "ms", "times the first"],
                  [[said, ms(time[name]), f"{to[name]:.1f}"] for said, name in [
                      ("cells", "cells"), ("corefinement alone", "corefinement_alone"),
                      ("corefinement and its outline", "corefinement"),
                      ("Nef polyhedra alone", "nef_alone"), ("Nef polyhedra and its outline", "nef")]]) +
            f"Aim: 10 times faster than corefinement: {aim(to['corefinement'] >= 10)}; 20 times faster "
            f"than Nef polyhedra: {aim(to['nef'] >= 20)}; the same area to 1e-9 of the outline's, before "
            f"outlines are put on their grid: {off:.0e}, {aim(off <= 1e-9)}. The grid of 0.001 mm then "
            f"moves the area by {grid:.0e} of the outline's.\n\n")


def booleans():
    rows = bench("boolean")
    sizes = [10, 100, 1000, 10000]
    off = max(abs(rows[f"{way}/{n}"]["area"] - rows[f"here/{n}"]["area"])
              for way in ["geos", "clipper"] for n in sizes)
    return ("## 2D Booleans\n\nOne rough disk less another, CPU ms. The integer clipper and GEOS round; "
            "this program's outlines are exact, which is what their time buys.\n\n" +
            table(["points each", *sizes], [[said, *(ms(rows[f"{way}/{n}"]["cpu_time"]) for n in sizes)]
                                            for said, way in [("here (CGAL, exact)", "here"),
                                                              ("GEOS", "geos"),
                                                              ("Clipper (integers)", "clipper")]]) +
            f"The areas differ by at most {off:.1g} mm^2 of 340,000.\n\n")


def rooms():
    rows = bench("rooms")
    single, double = (rows[f"rooms/real_time/threads:{n}"] for n in (1, 2))
    one, two = 1000 / single["cpu_time"], 2000 / double["cpu_time"]
    parts = {name: rows[f"rooms_{name}"]["cpu_time"] for name in ["adjusted", "drawn"]}
    fitted = single["cpu_time"] - parts["adjusted"] - parts["drawn"]
    return ("## Simulated rooms\n\nA corner of 63 readings adjusted, 400 rooms drawn, one panel fitted "
            "with its joint verdict. Counted by the cores' own time; the last row is by the clock, with "
            "whatever else the machine did.\n\n" +
            table(["", "one core", "two cores"],
                  [["rooms a second", f"{one:.0f}", f"{two:.0f}"],
                   ["aim", f"200: {aim(one >= 200)}",
                    f"1.8 times: {two / one:.2f}, {aim(two / one >= 1.8)}"],
                   ["by the clock", f"{single['items_per_second']:.0f}",
                    f"{double['items_per_second']:.0f}"]]) +
            f"One room takes {ms(single['cpu_time'])} ms of a core: the adjustment "
            f"{ms(parts['adjusted'])}, the draws {ms(parts['drawn'])}, the fit {ms(fitted)}.\n")


def machine():
    info = pathlib.Path("/proc/cpuinfo").read_text()
    name = re.search(r"model name\s*: (.*)", info)
    cores = os.cpu_count()
    return f"{name[1] if name else 'a processor'}, {cores} cores, {os.getloadavg()[0]:.1f} programs waiting"


def page():
    return ("# Speed\n\nWritten by `python3 tests/bench/speed.py` from one run, on a machine with "
            f"{machine()}. Benchmarks are the medians of {REPETITIONS} rounds in which they take "
            "turns. Read the figures as ratios: other work on the machine makes all of them "
            "larger. An aim that was missed says so.\n\n" +
            cold() + adjustment() + fit() + notch() + booleans() + rooms())


if __name__ == "__main__":
    keep = argparse.ArgumentParser(description=__doc__)
    keep.add_argument("--keep", action="store_true")
    text = page()
    print(text) if keep.parse_args().keep else (TOP / "docs/speed.md").write_text(text, encoding="utf-8")
