#!/usr/bin/env python3
"""What the schemas give as the value of a key that is left out is what the program takes: written out, it changes no
byte of what is computed. And each is a value that counts: most others in its place change something.

usage: defaults_test.py PROGRAM
"""
import json
import pathlib
import subprocess
import sys
import tempfile

program = str(pathlib.Path(sys.argv[1]).resolve())

# Keys whose values show in no output that is compared here.
UNSEEN = {"site.cable_cover", "site.water_attenuation", "fixture.bearing", "area.level", "falls.pool_depth", "falls.base"}

SITE = """\
rillwatt = 1
[site]
#site
name = "defaults"
catalogs = ["stock.toml"]
[[circuit]]
#circuit
id = "C1"
breaker = 20
conductor = "12 AWG"
length = "60 ft"
wiring = "pvc"
cover = "12 in"
at = [0, 0]
[[pump]]
#pump
id = "P1"
model = "own-pump"
circuit = "C1"
at = [12, 3]
[[transformer]]
#transformer
id = "T1"
model = "own-supply"
circuit = "C1"
at = [1, 0]
[[run]]
#run
id = "A"
from = "T1"
tap = 12
cable = "own-cable"
[[splice]]
#splice
id = "H1"
from = "A"
at = [5, 2]
[[fixture]]
#fixture
id = "F1"
model = "own-light"
from = "H1"
at = [12, 3.5]
lights = "falls"
[[fixture]]
id = "F2"
model = "path-2w"
from = "H1"
at = [4, 5]
[[area]]
#area
id = "pond"
kind = "water"
outline = [[10, 2], [16, 2], [16, 8], [10, 8]]
[[walk]]
#walk
id = "path"
line = [[2, 4], [8, 4]]
width = 4
target = "P5"
[[falls]]
#falls
id = "falls"
lip = [[12, 6], [14, 6]]
drop = 2
[[viewpoint]]
#viewpoint
id = "door"
at = [12, 0]
looks_at = ["falls"]
"""

STOCK = """\
rillwatt_catalog = 1
source = "made for this test"
[conductor_table.own]
source = "made for this test"
reference_temperature = "20 C"
temperature_coefficient = 0.004
unit = "ohm/km"
sizes = { "14 AWG" = 8.3 }
[cable.own-cable]
#cable
table = "own"
size = "14 AWG"
ampacity = 15
price_per_foot = 1
[fixture.own-light]
#fixture
kind = "other"
window = [9, 15]
watts = 20
distribution = { model = "beam", degrees = 60 }
[transformer.own-supply]
#transformer
va = 60
taps = [12]
[pump.own-pump]
#pump
volts = 120
amps = 2
watts = 150
"""


def computed(site, stock):
    """Everything the program says of a site, as programs read it."""
    said = []
    with tempfile.TemporaryDirectory() as folder:
        (pathlib.Path(folder) / "site.toml").write_text(site)
        (pathlib.Path(folder) / "stock.toml").write_text(stock)
        commands = (["check", "--format", "json"], ["light"],
                    ["circuits"], ["size", "--all", "--format", "json"], ["plan"])
        for command, *options in commands:
            done = subprocess.run([program, command, "site.toml", *options], cwd=folder, capture_output=True, text=True)
            said.append(done.stdout if done.returncode < 2 else f"status {done.returncode}: {done.stderr}")
        shown = subprocess.run([program, "catalog", "--catalog", "stock.toml", "own"], cwd=folder,
                               capture_output=True, text=True)
        said.append(shown.stdout)
    return said


def something_else(spec, value):
    """Another value that the key takes."""
    if isinstance(value, bool):
        return not value
    if "enum" in spec:
        return next(choice for choice in spec["enum"] if choice != value)
    if isinstance(value, str):
        return {"75 C": "20 C", "6 in": "30 in", "5 ft": "1 ft"}.get(value, "EUR")
    return {2020: 2017}.get(value, value * 0.8 if value else 1)


def tables(schema):
    for name, table in schema["properties"].items():
        keys = table.get("items", table)
        if isinstance(table.get("additionalProperties"), dict):
            keys = table["additionalProperties"]
        if "properties" in keys:
            yield name, keys["properties"]


plain = computed(SITE, STOCK)
if any(text.startswith("status") for text in plain):
    sys.exit("FAILED: the plain site is refused\n" + "\n".join(plain))
tried, silent, failures = 0, [], 0
for of in ("site", "catalog"):
    text = subprocess.run([program, "schema", "--of", of], check=True, capture_output=True, text=True).stdout
    for name, keys in tables(json.loads(text)):
        for key, spec in keys.items():
            if "default" not in spec:
                continue
            tried += 1
            mark = f"\n#{name}\n"
            if mark not in (SITE if of == "site" else STOCK):
                sys.exit(f"FAILED: no {name} in this test to write `{key}` into")

            def with_value(value):
                line = f"\n{key} = {json.dumps(value)}\n"  # where the comment was, so that no other line moves
                return computed(SITE.replace(mark, line), STOCK) if of == "site" else computed(
                    SITE, STOCK.replace(mark, line))

            if with_value(spec["default"]) != plain:
                print(f"FAILED: `{key}` of {name} written as {spec['default']!r} is not what counts without it")
                failures += 1
            if with_value(something_else(spec, spec["default"])) == plain:
                silent.append(f"{name}.{key}")
print(f"{tried} values tried; of these {len(silent)} show nowhere in this site: {', '.join(silent)}")
if tried < 30 or set(silent) - UNSEEN:
    sys.exit(f"FAILED: too little is tried: {sorted(set(silent) - UNSEEN)}")
sys.exit(1 if failures else 0)
