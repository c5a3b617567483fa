#!/usr/bin/env python3
"""Runs every command that README.md and the guide quote, in a fresh folder laid out like the repository.

A ```sh block is run line by line. A line that must not end with status 0 says so: `# exit status 1`. A ```text block
right after it must be exactly what the last line printed.

    readme_test.py PROGRAM REPOSITORY            fails when a command fails or its quoted output is not what it prints
    readme_test.py PROGRAM REPOSITORY --update   writes the real output into the quotes
"""
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

SETUP_COMMANDS = ("examples/run.sh", "tests/run.sh")
BLOCK = re.compile(r"```sh\n(?P<commands>.*?)```\n(?:\n```text\n(?P<output>.*?)```\n)?", re.S)


def lay_out(folder, program, repository):
    shutil.copytree(repository / "examples", folder / "examples")
    shutil.copytree(repository / "catalogs", folder / "catalogs")
    (folder / "build" / "release").mkdir(parents=True)
    (folder / "build" / "release" / "rillwatt").symlink_to(program)


def run_line(line, folder):
    wanted = re.search(r"# exit status (\d)", line)
    done = subprocess.run(["bash", "-c", line], cwd=folder, stdin=subprocess.DEVNULL,
                          capture_output=True, text=True, timeout=120)
    expected = int(wanted.group(1)) if wanted else 0
    problem = ""
    if done.returncode != expected:
        problem = f"ended with status {done.returncode}, not {expected}\n{done.stderr or done.stdout}"
    return done.stdout, problem


def check_block(match, folder, problems):
    """The block with its output as it really is."""
    output = ""
    for line in match["commands"].splitlines():
        if not line.strip() or line.startswith(("#",) + SETUP_COMMANDS):
            continue
        output, problem = run_line(line, folder)
        if problem:
            problems.append(f"$ {line}\n{problem}")
            return match[0]
    if match["output"] is None:
        return match[0]
    output = "\n".join(line.rstrip() for line in output.splitlines()) + "\n"
    if output != match["output"]:
        problems.append(f"the output quoted below is not what it prints: {match['commands']}")
    return f"```sh\n{match['commands']}```\n\n```text\n{output}```\n"


def main():
    program, repository = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]).resolve()
    update = "--update" in sys.argv[3:]
    pages = [repository / "README.md", *sorted((repository / "examples" / "guide").glob("*.md"))]
    failed = False
    for page in pages:
        problems = []
        with tempfile.TemporaryDirectory() as name:
            folder = pathlib.Path(name)
            lay_out(folder, program, repository)
            text = page.read_text(encoding="utf-8")
            real = BLOCK.sub(lambda match: check_block(match, folder, problems), text)
        if update and real != text:
            page.write_text(real, encoding="utf-8")
        for problem in problems:
            print(f"{page.relative_to(repository)}: {problem}")
        print(f"{page.relative_to(repository)}: {len(BLOCK.findall(text))} blocks, {len(problems)} problems")
        failed = failed or bool(problems)
    if failed and not update:
        print(f"To quote what it prints now: {sys.argv[0]} {program} {repository} --update")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
