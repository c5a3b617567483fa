#!/usr/bin/env python3
"""Writes src/function_order.ld: the functions that a check runs through, for the linker to put side by side.

    python3 tests/benchmarks/function_order.py

Needs the release build (its program with symbols and its link map) and valgrind. Run it after larger changes, before a
release; an order that is somewhat old costs a little speed and nothing else.
"""
import bisect
import pathlib
import re
import subprocess
import tempfile

ROOT = pathlib.Path(__file__).resolve().parents[2]
PROGRAM = ROOT / "build/release/rillwatt.symbols"
MAP = ROOT / "build/release/rillwatt.map"
ORDER = ROOT / "src/function_order.ld"
SITES = ["examples/fernhollow/site.toml", "examples/fernhollow-first-try/site.toml"]

HEAD = """/* The functions that `rillwatt check` runs through, side by side and in the order in which they call each other: a program
   comes from its file in pieces, and what a check needs of this one else lies scattered over most of them. Written by
   tests/benchmarks/function_order.py. */
SECTIONS
{
  .text.check :
  {
"""
TAIL = """  }
}
INSERT BEFORE .text;
"""


def sections():
    """Begin, name and object file of each stretch of code, by address."""
    text = MAP.read_text().partition("\nLinker script and memory map")[2]
    rows = re.findall(r"^ (\.text\S*)\s+0x(\w+)\s+0x(\w+) (\S+)$", text, re.MULTILINE)
    return sorted((int(begin, 16), name, file) for name, begin, size, file in rows if int(size, 16))


def addresses():
    lines = subprocess.run(["nm", PROGRAM], capture_output=True, text=True, check=True).stdout.splitlines()
    rows = [line.split() for line in lines]
    return {row[2]: int(row[0], 16) for row in rows if len(row) == 3 and row[1] in "tTiwW"}


def called_functions(site):
    """Names, as the linker knows them, of the functions that a check of `site` calls."""
    with tempfile.NamedTemporaryFile() as profile:
        subprocess.run(["valgrind", "--quiet", "--demangle=no", "--tool=callgrind",
                        f"--callgrind-out-file={profile.name}", PROGRAM, "check", ROOT / site],
                       stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        text = pathlib.Path(profile.name).read_text()
    return re.findall(r"^c?fn=\(\d+\) ([A-Za-z_][\w.$]*)", text, re.MULTILINE)


def patterns(name, file):
    """How a linker script names a stretch of code."""
    if name.startswith(".text._Z"):
        return [f"*({name})"]
    library, member = re.fullmatch(r"(?:.*/)?([^/(]+)(?:\((.*)\))?", file).groups()
    if member is None:
        return [f"*{library}({name})"]
    # Of some functions the C library has a version for each generation of processors.
    kind = re.fullmatch(r"(.*)-(?:avx|evex)[-\w]*\.o", member)
    if kind:
        return [f"*{library}:{kind[1]}-*avx*.o(.text.*)", f"*{library}:{kind[1]}-*evex*.o(.text.*)"]
    return [f"*{library}:{member}({name})"]


def order():
    begins, where = sections(), addresses()
    starts = [begin for begin, _, _ in begins]
    found = {}  # keeps the order
    for site in SITES:
        for name in called_functions(site):
            at = bisect.bisect(starts, where[name]) - 1 if name in where else -1
            if at >= 0:
                found.update(dict.fromkeys(patterns(*begins[at][1:])))
    return HEAD + "".join(f"    {line}\n" for line in found) + TAIL


if __name__ == "__main__":
    ORDER.write_text(order())
