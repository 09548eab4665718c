"""Writes a fuzzer's first inputs and its words: `seeds.py READER FOLDER`."""
import json
import pathlib
import re
import sys

TOP = pathlib.Path(__file__).resolve().parents[2]
READINGS = ["41 3/8", "41-3/8\"", "3' 5 3/8\"", "3 ft 5 3/8 in", "104.2 cm", "1.042 m", "41 ⅜",
            "41 3/8 strong", "42 3/8 burned 1", "114.2 cm burned 10 cm", "0.5 mm/m", "1/16 in/ft",
            "180 lb", "80 kg", "36 lb/ft3", "91 1/2", "-30", "+6 1/4", "3′ 5″"]
SIGNS = ["'", '"', "[[", "]]", "{ ", " }", " = ", "'''", "\n", "#", ",", ".", "nan", "inf", "1e308",
         "true", "false", "-0", "0x7fffffffffffffff", "1979-05-27", "\\u0000"]


def keys(schema):
    """Every key and every fixed value of a schema."""
    if isinstance(schema, list):
        return [key for part in schema for key in keys(part)]
    if not isinstance(schema, dict):
        return []
    found = list(schema.get("properties", {})) + [v for v in schema.get("enum", []) if isinstance(v, str)]
    return found + [key for part in schema.values() for key in keys(part)]


def file_seeds(reader):
    files = list(TOP.glob(f"rooms/*/{reader}.toml")) + list(TOP.glob(f"tests/job/*/{reader}-*.toml"))
    schema = json.loads((TOP / f"docs/schema/{reader}.schema.json").read_text(encoding="utf-8"))
    return [file.read_bytes() for file in files], keys(schema) + READINGS + SIGNS


def notation_seeds():
    units = ["mm", "cm", "m", "in", "ft", "lb", "kg", "N", "strong", "shy", "burned", "/", "'", "\"", "⅜"]
    return [bytes([kind]) + text.encode() for kind in range(8) for text in READINGS], units


def command_seeds():
    usage = (TOP / "tests/cli/usage_test.py").read_text(encoding="utf-8")
    table = (TOP / "src/command/table.cpp").read_text(encoding="utf-8")
    words = re.findall(r'"(--?\w+|\w+)"', table)
    lines = [line.split()[1:] for line in re.findall(r'"(nookfit [^"]*)"', table)]
    lines += [eval(line) for line in re.findall(r"^    (\(\"[^\n]*\)):", usage, re.M)]
    return ["\n".join(line).encode() for line in lines], words + ["=", "\n", ":", "0.95", "1/16"]


def main(reader, folder):
    if reader == "notation":
        seeds, words = notation_seeds()
    elif reader == "command_line":
        seeds, words = command_seeds()
    else:
        seeds, words = file_seeds(reader)
    for number, seed in enumerate(seeds):
        (pathlib.Path(folder) / "corpus" / f"seed-{number}").write_bytes(seed)
    escaped = sorted({"".join(f"\\x{byte:02x}" for byte in word.encode()) for word in words})
    (pathlib.Path(folder) / "words").write_text("".join(f'"{word}"\n' for word in escaped))


if __name__ == "__main__":
    main(*sys.argv[1:])
