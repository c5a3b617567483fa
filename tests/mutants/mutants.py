#!/usr/bin/env python3
"""Breaks the code on purpose, one small change at a time, and tells which changes no test notices.

    tests/mutants/mutants.py [--count N] [--seed S] [--build FOLDER] FILE:TESTS ...

FILE is a source file below src, TESTS the name of the test program that must notice (sizing -> sizing_test). Works in a
copy of the tree below build/mutants, so the tree itself is never touched. By hand, not part of the test run: a mutant
costs a compile, a link and a test run.
"""
import argparse
import pathlib
import random
import re
import shutil
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]

# What is changed, and into what. Each is a mistake that people make.
CHANGES = [
    (r"(?<![<>=!+\-*/&|])<(?![<=])(?=\s)", "<="), (r"(?<=\s)>(?![>=])(?=\s)", ">="),
    (r"<=", "<"), (r"(?<=\s)>=", ">"), (r"==", "!="), (r"!=", "=="),
    (r"(?<=\s)\+(?=\s)", "-"), (r"(?<=\s)-(?=\s)", "+"), (r"(?<=\s)\*(?=\s)", "/"), (r"(?<=\s)/(?=\s)", "*"),
    (r"&&", "||"), (r"\|\|", "&&"), (r"\+=", "-="), (r"\bstd::max\b", "std::min"), (r"\bstd::min\b", "std::max"),
    (r"\btrue\b", "false"), (r"\bfalse\b", "true"), (r"\bcontinue;", ";"),
]


def places(text):
    """Every (position, length, replacement) outside comments, strings, includes and asserts."""
    found, at = [], 0
    for line in text.splitlines(keepends=True):
        code = re.sub(r"//.*", "", line)
        skip = code.lstrip().startswith(("#", "*", "template", "static_assert")) or '"' in code
        if not skip:
            for pattern, new in CHANGES:
                found += [(at + m.start(), m.end() - m.start(), new) for m in re.finditer(pattern, code)]
        at += len(line)
    return found


def run(command, cwd, seconds):
    try:
        return subprocess.run(command, cwd=cwd, capture_output=True, timeout=seconds, text=True)
    except subprocess.TimeoutExpired:
        return None


def judge(tree, build, test):
    made = run(["cmake", "--build", str(build), "--target", f"{test}_test"], tree, 600)
    if made is None or made.returncode != 0:
        return "does not compile"
    tested = run([str(next(build.glob(f"tests/**/{test}_test")))], build, 300)
    if tested is None:
        return "noticed (hangs)"
    return "noticed" if tested.returncode != 0 else "SURVIVES"


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("targets", nargs="+")
    parser.add_argument("--count", type=int, default=20)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()

    tree = ROOT / "build" / "mutants" / "tree"
    build = ROOT / "build" / "mutants" / "build"
    if tree.exists():
        shutil.rmtree(tree)
    shutil.copytree(ROOT, tree, ignore=shutil.ignore_patterns("build", ".git", "node_modules"))
    run(["cmake", "-S", str(tree), "-B", str(build), "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Debug"], tree, 300)

    pool = []
    for target in options.targets:
        name, test = target.split(":")
        text = (tree / name).read_text()
        pool += [(name, test, place) for place in places(text)]
    random.Random(options.seed).shuffle(pool)

    survivors = 0
    for name, test, (at, length, new) in pool[:options.count]:
        path = tree / name
        text = path.read_text()
        path.write_text(text[:at] + new + text[at + length:])
        verdict = judge(tree, build, test)
        path.write_text(text)
        line = text.count("\n", 0, at) + 1
        print(f"{verdict:18} {name}:{line}: `{text[at:at + length]}` -> `{new}`: "
              f"{text.splitlines()[line - 1].strip()}", flush=True)
        survivors += verdict == "SURVIVES"
    print(f"{survivors} of {min(options.count, len(pool))} mutants survive ({len(pool)} places in all)")


if __name__ == "__main__":
    sys.exit(main())
