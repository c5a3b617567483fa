#!/usr/bin/env python3
"""Does the printed arithmetic hold? explain_arithmetic_test.py PROGRAM SITE...

Every equation `rillwatt explain` prints is computed again from the figures that stand in it, as somebody with a pocket
calculator would; each must give the figure after its equals sign, as far as the printed digits reach.
"""

import json
import re
import subprocess
import sys

UNITS = r"\s*(?:ohm/kft|ohm/km|VA|V|A|W|ft|m|ohm)\b"
EQUATION = re.compile(r"([-+x/^().\d\s]*(?:[-+x/^]|\d)[-+x/^().\d\s]*)=\s*(-?\d+(?:\.\d+)?)\s*(?=[^-+x/^\d\s=]|$)")


def equations(text):
    """Left sides without units, and right sides, of a text whose wrapped lines are joined again."""
    joined = re.sub(r"\n     (?! )", " ", text)
    for line in joined.splitlines():
        if " = " not in line:
            continue
        plain = re.sub(UNITS, " ", line.split(": ")[-1] if ": " in line else line)
        for left, right in re.findall(r"([\d(][-+x/^().\d\s]*?)\s*=\s*(-?\d+(?:\.\d+)?)", plain):
            yield line.strip(), left, right


def holds(left, right):
    """Whether the left side gives the right one within what rounding of the printed figures allows."""
    expression = left.replace("x", "*").replace("^", "**")
    value = eval(expression, {"__builtins__": {}})
    decimals = len(right.split(".")[1]) if "." in right else 0
    worst = 0.5 * 10 ** -decimals
    numbers = re.findall(r"\d+\.\d+|\d+", expression)
    for number in numbers:  # each printed figure may be off by half of its last digit
        if "." not in number:
            continue
        step = 0.5 * 10 ** -len(number.split(".")[1])
        moved = expression.replace(number, repr(float(number) + step), 1)
        worst += abs(eval(moved, {"__builtins__": {}}) - value)
    return abs(value - float(right)) <= worst * 1.01 + 1e-12


def main():
    program, sites = sys.argv[1], sys.argv[2:]
    failures, tried = 0, 0
    for site in sites:
        checked = subprocess.run([program, "check", site, "--format", "json"], capture_output=True, text=True)
        nominal = json.loads(checked.stdout)["cases"][0]
        ids = [part["id"] for kind in ("fixtures", "runs", "transformers") for part in nominal[kind]]
        for part in ids:
            explained = subprocess.run([program, "explain", site, part], capture_output=True, text=True)
            if explained.returncode != 0:
                print("FAILED: explain %s: %s" % (part, explained.stderr))
                failures += 1
            lines = 0
            for line, left, right in equations(explained.stdout):
                lines += 1
                if not holds(left, right):
                    print("FAILED: %s, %s: %s" % (site, part, line))
                    failures += 1
            tried += lines
            if lines < 2:
                print("FAILED: %s explains %s without arithmetic" % (site, part))
                failures += 1
        volts = {f["id"]: f["volts"] for f in nominal["fixtures"]}
        for part in volts:
            text = subprocess.run([program, "explain", site, part], capture_output=True, text=True).stdout
            if "%.4f V" % volts[part] not in text:
                print("FAILED: the volts of %s are not in its explanation" % part)
                failures += 1
    print("%d equations, %d failures" % (tried, failures))
    return 1 if failures or tried == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
