"""Runs the program as a person would, from the top of the tree."""
import json
import os
import pathlib
import subprocess
import tempfile

TOP = pathlib.Path(__file__).resolve().parents[2]
NOOKFIT = os.environ.get("NOOKFIT", "build/release/src/nookfit")
JOBS = ["lookout", "window-bench", "corner-desk"]


def nookfit(*words, env=None, stdout=subprocess.PIPE, cwd=TOP):
    """The finished run: .returncode, .stdout, .stderr. Colors and locale as in a bare shell."""
    shell = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "TERM": "xterm", **(env or {})}
    return subprocess.run([str(TOP / NOOKFIT), *words], stdout=stdout, stderr=subprocess.PIPE,
                          text=True, encoding="utf-8", env=shell, cwd=cwd, timeout=300)


def answer(*words):
    """The JSON answer of a run."""
    return json.loads(nookfit(*words, "--json").stdout)


def read_terminal(end):
    """All that comes from a terminal's other end until that is closed, as bytes."""
    text = b""
    try:
        while piece := os.read(end, 65536):
            text += piece
    except OSError:  # the other end is closed
        pass
    os.close(end)
    return text


class JobFolder:
    """A job folder made of texts, gone at the end: `with JobFolder(room=...) as folder`."""

    def __init__(self, **texts):
        self.texts = texts

    def __enter__(self):
        self.folder = tempfile.TemporaryDirectory()
        for name, text in self.texts.items():
            pathlib.Path(self.folder.name, name + ".toml").write_text(text, encoding="utf-8")
        return self.folder.name

    def __exit__(self, *_):
        self.folder.cleanup()
