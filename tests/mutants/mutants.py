#!/usr/bin/env python3
"""Breaks the code on purpose, one small change at a time, and tells which changes no test notices.

    tests/mutants/mutants.py [--count N] [--seed S] FILE[,FILE...]:TEST[,TEST...] ...

FILE is a source file (src/solver/newton.cpp) or a pattern (src/check/*.cpp), TEST a test program without its "_test"
(solver) or, written /REGEX/, the tests of that name to ctest (/^cli:/). The tests are tried in that order until one
notices. N mutants are drawn from all places of all files; one that does not compile is replaced by another.

Works in a copy of the tree in build/mutants, so the tree itself is never touched; a changed file is put back after
each mutant. By hand, not part of the test run: a mutant costs a compile, a link and a test run. --list only lists.
"""
import argparse
import collections
import pathlib
import random
import re
import shutil
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
TREE = ROOT / "build" / "mutants" / "tree"
BUILD = ROOT / "build" / "mutants" / "build"

# What is changed, and into what. Each is a mistake that people make.
CHANGES = [
    (r"(?<=\s)<(?=\s)", "<="), (r"(?<=\s)>(?=\s)", ">="), (r"<=(?!>)", "<"), (r"(?<=\s)>=", ">"),
    (r"==", "!="), (r"!=", "=="),
    (r"(?<=\s)\+(?=\s)", "-"), (r"(?<=\s)-(?=\s)", "+"), (r"(?<=\s)\*(?=\s)", "/"), (r"(?<=\s)/(?=\s)", "*"),
    (r"&&", "||"), (r"\|\|", "&&"), (r"\+=", "-="), (r"-=", "+="), (r"(?<=[\s(])!(?=[\w(])", ""),
    (r"\bstd::max\b", "std::min"), (r"\bstd::min\b", "std::max"),
    (r"\btrue\b", "false"), (r"\bfalse\b", "true"), (r"\bcontinue;", ";"), (r"\bbreak;", ";"),
    (r"(?<![\w.])0(?![\w.'])", "1"), (r"(?<![\w.])1(?![\w.'])", "2"),
    (r"^\s*[\w.\->]+\((?:[^;]*)\);$", ";"), (r"^\s*if \(.*\) return[^;]*;$", ";"),
]


def without_words(line):
    """The line with its comment and the text of its strings blanked out, at the same length."""
    line = re.sub(r'"(?:[^"\\]|\\.)*"', lambda m: '"' + "_" * (len(m[0]) - 2) + '"', line)
    return re.sub(r"//.*", lambda m: " " * len(m[0]), line)


def places(text):
    """Every (position, length, replacement) outside comments, strings, includes and declarations of templates."""
    found, at = [], 0
    for line in text.splitlines(keepends=True):
        code = without_words(line.rstrip("\n"))
        if not code.lstrip().startswith(("#", "template", "static_assert", "namespace")):
            for pattern, new in CHANGES:
                found += [(at + m.start(), m.end() - m.start(), new) for m in re.finditer(pattern, code)]
        at += len(line)
    return sorted(set(found))


def run(command, cwd, seconds):
    try:
        return subprocess.run(command, cwd=cwd, capture_output=True, timeout=seconds, text=True)
    except subprocess.TimeoutExpired:
        return None


def build(target):
    made = run(["cmake", "--build", str(BUILD), "-j2", "--target", target], TREE, 1800)
    return made is not None and made.returncode == 0


def verdict_of(test):
    """What one test says of the tree as it stands: "" when it notices nothing."""
    by_ctest = test.startswith("/")
    if not build("all" if by_ctest else f"{test}_test"):
        return "does not compile"
    if by_ctest:
        command = ["ctest", "--test-dir", str(BUILD), "-R", test.strip("/"), "--stop-on-failure", "--timeout", "300"]
    else:
        command = [str(next(BUILD.glob(f"tests/**/{test}_test"))), "--abort"]
    tested = run(command, BUILD, 300)
    if tested is None:
        return f"hangs {test}"
    return f"noticed by {test}" if tested.returncode != 0 else ""


def judge(name, place, tests):
    at, length, new = place
    path = TREE / name
    text = path.read_text()
    path.write_text(text[:at] + new + text[at + length:])
    try:
        return next(filter(None, map(verdict_of, tests)), "SURVIVES")
    finally:
        path.write_text(text)


def copy_tree():
    """Brings the copy up to date; what has not changed keeps its time, so that little is built again."""
    tops = ["src", "include", "catalogs", "tests", "examples", "CMakeLists.txt", "README.md", "DEVELOPERS.md",
            ".clang-format"]
    wanted = {path.relative_to(ROOT) for top in tops for path in [ROOT / top, *(ROOT / top).rglob("*")]
              if path.is_file()}
    for old in [path for path in TREE.rglob("*") if path.is_file() and path.relative_to(TREE) not in wanted]:
        old.unlink()
    for name in wanted:
        new = TREE / name
        if not new.exists() or new.read_bytes() != (ROOT / name).read_bytes():
            new.parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(ROOT / name, new)


def configure():
    """Like the dev preset, but without debug information and warnings (a mutant may leave a value unused), and with the
    library's own checks, so that an index one too far is noticed."""
    return run(["cmake", "-S", str(TREE), "-B", str(BUILD), "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Debug",
                "-DCMAKE_CXX_FLAGS_DEBUG=-O0 -g0", "-DCMAKE_CXX_FLAGS=-w -D_GLIBCXX_ASSERTIONS"], TREE, 300).returncode == 0


def pool_of(targets):
    pool = []
    for target in targets:
        names, tests = target.split(":", 1)
        for pattern in names.split(","):
            files = sorted(ROOT.glob(pattern))
            if not files:
                sys.exit(f"no file {pattern}")
            for path in files:
                name = str(path.relative_to(ROOT))
                pool += [(name, tests.split(","), place) for place in places(path.read_text())]
    return pool


def described(name, place):
    at, length, new = place
    text = (ROOT / name).read_text()
    line = text.count("\n", 0, at) + 1
    return (f"{name}:{line}: `{text[at:at + length].strip()}` -> `{new}`: "
            f"{text.splitlines()[line - 1].strip()}")


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("targets", nargs="+", metavar="FILES:TESTS")
    parser.add_argument("--count", type=int, default=20)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--only", metavar="FILE:LINE", help="every place of one line")
    parser.add_argument("--list", action="store_true", help="list the places drawn, judge none")
    options = parser.parse_args()

    pool = pool_of(options.targets)
    random.Random(options.seed).shuffle(pool)
    if options.only:
        pool = [drawn for drawn in pool if described(drawn[0], drawn[2]).startswith(options.only + ":")]
    if options.list:
        print("\n".join(described(name, place) for name, _, place in pool[:options.count]))
        return 0

    copy_tree()
    if not configure():
        sys.exit("the copy does not configure")
    for test in sorted({test for _, tests, _ in pool for test in tests}):
        if said := verdict_of(test):
            sys.exit(f"nothing is changed yet, and: {said}")

    tally, survivors = collections.defaultdict(collections.Counter), []
    for name, tests, place in pool:
        if sum(sum(counts.values()) for counts in tally.values()) == options.count:
            break
        verdict = judge(name, place, tests)
        print(f"{verdict:24} {described(name, place)}", flush=True)
        if verdict == "does not compile":
            continue
        tally[name]["survive" if verdict == "SURVIVES" else "noticed"] += 1
        if verdict == "SURVIVES":
            survivors.append(described(name, place))

    print(f"\n{'noticed':>8} {'survive':>8}  file ({len(pool)} places in all)")
    for name, counts in sorted(tally.items()):
        print(f"{counts['noticed']:8} {counts['survive']:8}  {name}")
    total = sum(tally.values(), collections.Counter())
    print(f"{total['noticed']:8} {total['survive']:8}  in all\n" + "\n".join(survivors))
    return 0


if __name__ == "__main__":
    sys.exit(main())
