"""The JSON Schemas of docs/schema accept every good file and refuse what is no reading, key or word."""
import json
import tomllib
import unittest

import jsonschema

from program import TOP


def schema(name):
    text = (TOP / "docs" / "schema" / f"{name}.schema.json").read_text(encoding="utf-8")
    return json.loads(text)


def checker(name):
    jsonschema.Draft202012Validator.check_schema(schema(name))
    return jsonschema.Draft202012Validator(schema(name))


def toml(path):
    return tomllib.loads(path.read_text(encoding="utf-8-sig"))


# Faults of form, which a schema can see; the others need the whole file, or the notation.
OF_FORM = ("unknown-key", "missing-key", "wrong-type", "unknown-word")


class Schemas(unittest.TestCase):
    def test_samples_are_accepted(self):
        for name in ("room", "design", "pieces"):
            for path in sorted((TOP / "rooms").glob(f"*/{name}.toml")):
                with self.subTest(path=path.name, job=path.parent.name):
                    checker(name).validate(toml(path))

    def test_the_readers_own_good_files_are_accepted(self):
        for file, name in (("room", "room"), ("alcove", "room"), ("design", "design"), ("pieces", "pieces")):
            with self.subTest(file=file):
                checker(name).validate(toml(TOP / "tests" / "job" / "good" / f"{file}.toml"))

    def test_faults_of_form_are_refused(self):
        refused = 0
        for path in sorted((TOP / "tests" / "job" / "bad").glob("*.toml")):
            said = path.with_suffix(".expected").read_text(encoding="utf-8")
            if not any(f"[{code}]" in said for code in OF_FORM):
                continue
            name = path.name.split("-")[0]
            with self.subTest(file=path.name):
                self.assertTrue(list(checker(name).iter_errors(toml(path))))
                refused += 1
        self.assertGreater(refused, 20)


if __name__ == "__main__":
    unittest.main()
