#!/usr/bin/env python3
"""The JSON Schemas that the program prints take every site and catalog of this tree and refuse common slips.

usage: schema_test.py PROGRAM SOURCE_TREE      (needs python3-jsonschema and Python 3.11's tomllib)
"""
import copy
import json
import pathlib
import subprocess
import sys
import tomllib

import jsonschema

program, root = sys.argv[1], pathlib.Path(sys.argv[2])


def schema(of):
    text = subprocess.run([program, "schema", "--of", of], check=True, capture_output=True, text=True).stdout
    made = json.loads(text)
    jsonschema.Draft202012Validator.check_schema(made)
    return jsonschema.Draft202012Validator(made)


def complain(what):
    print("FAILED:", what)
    sys.exit(1)


site, catalog = schema("site"), schema("catalog")
sites = sorted(root.glob("examples/*/site.toml")) + sorted(root.glob("tests/check/*/good.toml")) + sorted(
    root.glob("tests/check/*/bad.toml"))
catalogs = sorted(root.glob("catalogs/**/*.toml")) + sorted(root.glob("examples/*/stock.toml")) + sorted(
    root.glob("tests/check/*/catalog.toml"))
for validator, paths in ((site, sites), (catalog, catalogs)):
    for path in paths:
        for error in validator.iter_errors(tomllib.loads(path.read_text())):
            complain(f"{path}: {error.message} at {list(error.absolute_path)}")

sound = tomllib.loads((root / "examples/fernhollow/site.toml").read_text())
slips = {
    "unknown table": lambda s: s.update(fixtures=[]),
    "unknown key": lambda s: s["fixture"][0].update(colour="warm"),
    "missing key": lambda s: s["fixture"][0].pop("model"),
    "text for a number": lambda s: s["circuit"][0].update(breaker="20 A"),
    "word that is no choice": lambda s: s["area"][0].update(kind="grass"),
    "list for a text": lambda s: s["run"][0].update(cable=["12/2"]),
    "no format version": lambda s: s.pop("rillwatt"),
}
for name, slip in slips.items():
    wrong = copy.deepcopy(sound)
    slip(wrong)
    if site.is_valid(wrong):
        complain(f"the schema takes a site with: {name}")
print(f"{len(sites)} sites and {len(catalogs)} catalogs taken, {len(slips)} slips refused")
