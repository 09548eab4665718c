"""Finds what breaks the layering of src/: `python3 tests/layers/layers.py ROOT`.

Each folder may include its own files and those of lower layers; a private link does not stop an
include, so this reads the files. No two types may have one name either, even in files that never
meet: the linker would take the functions of one for those of the other. Exit status 1 when anything
is found.
"""
import collections
import pathlib
import re
import sys

LAYER = {
    "base": 0,
    "room": 1, "design": 1,
    "survey": 2, "solid": 2, "job": 2,
    "fit": 3, "fasten": 3,
    "adapt": 4, "shop": 4, "safety": 4,
    "sheet": 5,
    "command": 6,
}
STRANGERS = {("sheet", "job")}  # a lower layer, and yet not to be known

# What may be seen only in some files: pattern in a line of code -> where it is allowed.
ONLY_IN = [
    ("CGAL", r"#include <CGAL/", r"solid/\w+\.cpp"),
    ("Eigen", r"#include <Eigen/", r"(survey|fit)/\w+\.cpp"),
    ("toml++", r"#include <toml", r"job/\w+\.cpp"),
    ("CLI11", r"#include <CLI/", r"command/\w+\.cpp"),
    ("cairo", r"#include <cairo", r"sheet/\w+\.cpp"),
    ("json", r"#include <nlohmann/(?!json_fwd\.hpp)", r"sheet/\w+\.cpp"),
    ("json", r"#include <nlohmann/json_fwd", r"sheet/\w+\.(cpp|h)"),
    ("files", r"#include <(fstream|filesystem|fcntl\.h|sys/stat\.h)>|\b(fopen|[io]?fstream)\b",
     r"(job|sheet)/\w+\.(cpp|h)"),
    ("printing", r"#include <(iostream|print|fmt/ostream\.h)>|\bstd::(cout|cerr|clog)\b"
                 r"|\b(printf|fprintf|puts|fputs|fwrite|putchar)\b|\bfmt::print\b",
     r"(command/\w+\.(cpp|h)|main\.cpp)"),
]
ONE_FILE = {"cairo": "cairo may be seen in one file only"}
LONGEST_FILE = 400  # chosen: more than that is more than one thing


def code_of(text):
    """The text with comments and string literals blanked, line breaks and includes kept."""
    keep_lines = lambda m: "\n" * m.group(0).count("\n") or '""'
    return re.sub(r'//[^\n]*|/\*.*?\*/|R"\((?:.|\n)*?\)"|(?<!include )"(?:\\.|[^"\\\n])*"',
                  keep_lines, text, flags=re.S)


def included(line):
    match = re.match(r'\s*#include "([^"]+)"', line)
    return match and match.group(1)


def folder_fault(here, target):
    """Why a file in folder `here` may not include `target`; None where it may."""
    there = target.split("/")[0]
    if there == here:
        return None
    if "/" not in target or there not in LAYER:
        return f'"{target}" is in no folder of src/'
    if here == "main.cpp":
        return None if there in ("command", "base") else "main.cpp may see only command and base"
    if LAYER[there] >= LAYER[here] or (here, there) in STRANGERS:
        return f"{here} may not see {there}"
    return None


def faults_in(name, text):
    """(line number, what is wrong) for one file; `name` is its path below src/."""
    here = name.split("/")[0]
    if here not in LAYER and name != "main.cpp":
        yield 1, f"{here} is no layer"
        return
    lines = code_of(text).splitlines()
    if not re.match(r"//.*\w", text):
        yield 1, "the first line does not say what the file is for"
    if len(lines) > LONGEST_FILE:
        yield LONGEST_FILE + 1, f"over {LONGEST_FILE} lines"
    for number, line in enumerate(lines, 1):
        target = included(line)
        fault = target and folder_fault(here, target)
        if fault:
            yield number, fault
        for what, pattern, where in ONLY_IN:
            if re.search(pattern, line) and not re.fullmatch(where, name):
                yield number, f"{what} may not be seen here"


def types_in(text):
    """(line number, full name) of each type defined at namespace scope, not in an unnamed one."""
    code, open_braces = code_of(text), []
    token = re.compile(r"namespace(?:\s+(?P<space>[\w:]+))?\s*\{"
                       r"|(?:struct|class|union|enum(?:\s+class)?)\s+(?P<type>\w+(?:::\w+)*)(?:\s+final)?"
                       r"\s*(?::[^;{()]*)?\{|[{}]")
    for match in token.finditer(code):
        name = match["type"]
        if name and None not in open_braces:
            yield code.count("\n", 0, match.start()) + 1, "::".join([*open_braces, name])
        if match.group(0) == "}":
            open_braces[-1:] = []
        else:
            open_braces.append(match["space"])


def faults_of(root):
    """Every fault of ROOT/src as 'path:line: what'."""
    src = pathlib.Path(root) / "src"
    files = sorted(p for p in src.rglob("*") if p.suffix in (".cpp", ".h"))
    seen = {what: [] for what in ONE_FILE}
    types = collections.defaultdict(list)
    found = []
    for path in files:
        name, text = path.relative_to(src).as_posix(), path.read_text()
        found += [f"src/{name}:{n}: {what}" for n, what in faults_in(name, text)]
        for line, type_name in types_in(text):
            types[type_name].append(f"src/{name}:{line}")
        for what in ONE_FILE:
            pattern = next(p for w, p, _ in ONLY_IN if w == what)
            if re.search(pattern, code_of(text)):
                seen[what].append(name)
    for what, names in seen.items():
        found += [f"src/{name}:1: {ONE_FILE[what]}" for name in names[1:]]
    for type_name, places in types.items():
        found += [f"{place}: {type_name} is also a type in {places[0]}" for place in places[1:]]
    return found, len(files)


if __name__ == "__main__":
    faults, count = faults_of(sys.argv[1])
    print("\n".join(faults) if faults else f"{count} files, each in its layer")
    sys.exit(1 if faults or not count else 0)
