"""Reads the plan and the single-line diagram of several gardens back and looks at what a reader would see.

Usage: drawings_test.py PROGRAM SOURCE_FOLDER
Each drawing must be well-formed (xmllint), name itself for a screen reader, ask for nothing outside itself and
be the same on every run. On the plan no label may overlap another, cover a symbol or leave the frame, and its
text must fit its box; in the notes and in the diagram no text may overlap another or leave the sheet.
"""

import random
import re
import subprocess
import sys
import tempfile
from pathlib import Path
from xml.etree import ElementTree

SVG = "{http://www.w3.org/2000/svg}"
problems = []


def check(truth, words):
    if not truth:
        problems.append(words)


def drawing(program, site, *options):
    command = [program, "plan", str(site), *options]
    run = subprocess.run(command, capture_output=True)
    check(run.returncode in (0, 1), f"{site}: exit {run.returncode}: {run.stderr.decode()[:400]}")
    check(subprocess.run(command, capture_output=True).stdout == run.stdout, f"{site}: two runs differ")
    lint = subprocess.run(["xmllint", "--noout", "-"], input=run.stdout, capture_output=True)
    check(lint.returncode == 0, f"{site}: xmllint: {lint.stderr.decode(errors='replace')[:400]}")
    return run.stdout.decode() if lint.returncode == 0 else None


def overlap(a, b, slack=0.15):
    return (a[0] + slack < b[0] + b[2] and b[0] + slack < a[0] + a[2] and
            a[1] + slack < b[1] + b[3] and b[1] + slack < a[1] + a[3])


def text_box(text):
    size = float(text.get("font-size"))
    width = float(text.get("textLength"))
    x = float(text.get("x")) - {"middle": width / 2, "end": width}.get(text.get("text-anchor"), 0)
    return (x, float(text.get("y")) - 0.74 * size, width, 0.95 * size)


def words(text):
    return "".join(text.itertext())


def check_frame(name, root):
    check(root.get("role") == "img", f"{name}: no role")
    ids = {e.get("id") for e in root.iter() if e.get("id")}
    for reference in root.get("aria-labelledby", "").split():
        check(reference in ids, f"{name}: {reference} names nothing")
    check(root.find(f"{SVG}title") is not None and root.find(f"{SVG}desc") is not None, f"{name}: no title or desc")
    for element in root.iter():
        check(element.tag != f"{SVG}script" and element.tag != f"{SVG}image", f"{name}: {element.tag}")
        for key, value in element.attrib.items():
            check(not re.search(r"https?:|url\((?!#)", value), f"{name}: reaches out: {key}={value}")
            check(not key.startswith("on") and not key.endswith("href"), f"{name}: {key}")


def check_texts_apart(name, texts, sheet):
    boxes = [(text_box(t), words(t)) for t in texts]
    for i, (a, said) in enumerate(boxes):
        inside = a[0] >= 0 and a[1] >= 0 and a[0] + a[2] <= sheet[0] and a[1] + a[3] <= sheet[1]
        check(inside, f"{name}: '{said}' leaves the sheet")
        for b, other in boxes[:i]:
            check(not overlap(a, b), f"{name}: '{said}' overlaps '{other}'")


def sheet_of(root):
    return tuple(float(v) for v in root.get("viewBox").split()[2:])


def check_plan(name, text, lights, left_out=0):
    root = ElementTree.fromstring(text)
    check_frame(name, root)
    frame = next(e for e in root.iter(f"{SVG}rect") if e.get("class") == "rw-frame" and float(e.get("height")) > 20)
    frame = tuple(float(frame.get(k)) for k in ("x", "y", "width", "height"))
    labels = [g for g in root.iter(f"{SVG}g") if g.get("data-box")]
    boxes = []
    for label in labels:
        box = tuple(float(v) for v in label.get("data-box").split())
        said = " ".join(words(t) for t in label.iter(f"{SVG}text"))
        for t in label.iter(f"{SVG}text"):
            b = text_box(t)
            fits = b[0] >= box[0] - 0.2 and b[0] + b[2] <= box[0] + box[2] + 0.2 and b[1] >= box[1] - 0.5
            check(fits, f"{name}: '{said}' does not fit its box")
        inside = (box[0] >= frame[0] and box[1] >= frame[1] and box[0] + box[2] <= frame[0] + frame[2] and
                  box[1] + box[3] <= frame[1] + frame[3])
        check(inside, f"{name}: label '{said}' leaves the frame")
        for other, other_said in boxes:
            check(not overlap(box, other), f"{name}: label '{said}' overlaps '{other_said}'")
        boxes.append((box, said))
    symbols = [g for g in root.iter(f"{SVG}g") if g.get("transform", "").startswith("translate") and g.get("data-part")]
    for symbol in symbols:
        x, y = (float(v) for v in re.findall(r"-?[\d.]+", symbol.get("transform"))[:2])
        for box, said in boxes:
            check(not overlap(box, (x - 5, y - 5, 10, 10)), f"{name}: label '{said}' covers {symbol.get('data-part')}")
        for leader in (e for e in root.iter(f"{SVG}path") if e.get("class") == "rw-leader"):
            from_x, from_y = (float(v) for v in re.findall(r"-?[\d.]+", leader.get("d"))[:2])
            apart = abs(from_x - x) + abs(from_y - y) > 4 or "crowded" in name  # there symbols lie upon one another
            check(apart, f"{name}: a leader strikes through {symbol.get('data-part')}")
    drawn = {s.get("data-part") for s in symbols}
    labelled = {g.get("data-part") for g in labels}
    check(len(lights - drawn) == 0, f"{name}: no symbol for {lights - drawn}")
    check(len(lights - labelled) <= left_out, f"{name}: no label for {lights - labelled}")
    if lights - labelled:
        check("left out for want of room" in text, f"{name}: says nothing of the labels it leaves out")
    in_labels = {t for label in labels for t in label.iter(f"{SVG}text")}
    check_texts_apart(name, [t for t in root.iter(f"{SVG}text") if t not in in_labels and t.get("x") not in ("0", "-24")],
                      sheet_of(root))
    return root


def check_north(name, root):
    """The arrow stands in its own room: no text but its N comes near."""
    arrow = next((g for g in root.iter(f"{SVG}g") if g.get("class") == "rw-north"), None)
    check(arrow is not None, f"{name}: no arrow to the north")
    if arrow is None:
        return
    x, y = (float(v) for v in re.findall(r"-?[\d.]+", arrow.get("transform"))[:2])
    room = (x - 30, y - 19, 49, 38)
    own = set(arrow.iter(f"{SVG}text"))
    for text in root.iter(f"{SVG}text"):
        check(text in own or not overlap(text_box(text), room), f"{name}: '{words(text)}' runs into the arrow to the north")


def label_places(text):
    """The names of parts on a plan and where they stand; values of light bear no part."""
    return re.findall(r'<g class="rw-label[^>]*data-part="[^>]*>', text)


def check_light(name, text, levels):
    """Nothing hides the lines of equal light, and every level says its value beside a line and in the legend."""
    layers = [text.find(part) for part in ('class="isolux"', "<mask", 'mask="url(', 'class="isolux-lines"')]
    check(-1 not in layers and layers == sorted(layers), f"{name}: light, walks, lines in the wrong order: {layers}")
    root = ElementTree.fromstring(text)
    said = [words(t) for t in root.iter(f"{SVG}text")]
    for level in levels:
        check(said.count(f"{level} lx") >= 2, f"{name}: {level} lx is named {said.count(f'{level} lx')} times")
    return root


def light_section(program, site, folder):
    """The drawing of the light in the report page."""
    target = folder / f"report-{site.parent.name}-{site.stem}"
    run = subprocess.run([program, "report", str(site), "--output", str(target)], capture_output=True)
    check(run.returncode in (0, 1), f"{site}: report: exit {run.returncode}: {run.stderr.decode()[:400]}")
    page = (target / "report.html").read_text()
    found = re.search(r'<svg [^>]*aria-label="Plan with isolux lines".*?</svg>', page, re.DOTALL)
    check(found, f"{site}: the report has no drawing of the light")
    return found.group(0) if found else None


def check_one_style(name, root):
    """Colours stand in the style that all drawings share, with those for dark screens; a mask is black and white."""
    masked = {e for mask in root.iter(f"{SVG}mask") for e in mask.iter()}
    for element in root.iter():
        for key, value in element.attrib.items():
            own = element not in masked and re.search(r"(^|:)#[0-9a-fA-F]{3,6}\b", value)
            check(not own, f"{name}: a colour of its own: {key}={value}")


def check_light_section(name, text, levels):
    root = check_light(name, text, levels)
    check_one_style(name, root)
    texts = list(root.iter(f"{SVG}text"))
    check_texts_apart(name, texts, sheet_of(root))
    lamps = [g for g in root.iter(f"{SVG}g") if "rw-light" in g.get("class", "").split()]
    check(lamps, f"{name}: no lights")
    for lamp in lamps:
        x, y = (float(v) for v in re.findall(r"-?[\d.]+", lamp.get("transform"))[:2])
        for t in texts:
            check(not overlap(text_box(t), (x - 5, y - 5, 10, 10)), f"{name}: '{words(t)}' covers a light")


def check_diagram(name, text, parts):
    root = ElementTree.fromstring(text)
    check_frame(name, root)
    check_texts_apart(name, list(root.iter(f"{SVG}text")), sheet_of(root))
    shown = {g.get("data-part") for g in root.iter(f"{SVG}g") if g.get("data-part")}
    check(parts <= shown, f"{name}: not in the diagram: {parts - shown}")


def ids_in(site, tables):
    text = site.read_text()
    found = set()
    for block in re.split(r"(?m)^(?=\[)", text):
        head = re.match(r"\[\[(\w+)\]\]", block)
        identity = re.search(r'(?m)^id = "([^"]*)"', block)
        if head and identity and head.group(1) in tables:
            found.add(identity.group(1))
    return found


def bare_plan(folder):
    """Only what is taped first: no electrical part, in metres, with north."""
    site = folder / "bare.toml"
    site.write_text("""rillwatt = 1
[site]
name = "Bare ground"
units = "m"
north = 60
[[area]]
id = "pond"
kind = "water"
outline = [[2, 2], [6, 2], [7, 5], [3, 6]]
[[area]]
id = "house"
kind = "building"
outline = [[0, 8], [9, 8], [9, 11], [0, 11]]
[[mark]]
id = "post"
at = [0, 0]
""")
    return site


def straight_walk(folder):
    """A walk due north, whose line has no width, ends on another that crosses it; lit from one side."""
    site = folder / "straight.toml"
    site.write_text("""rillwatt = 1
[site]
name = "Straight"
units = "m"
north = 90
[[walk]]
id = "up"
line = [[0, 0], [0, 6]]
width = 1.2
[[walk]]
id = "across"
line = [[-3, 6], [3, 6]]
width = 1.2
[[transformer]]
id = "T"
model = "mag-150"
at = [-3, -2]
[[run]]
id = "A"
from = "T"
tap = 12
cable = "12/2"
[[fixture]]
id = "first"
model = "path-2w"
from = "A"
at = [1, 1]
[[fixture]]
id = "second"
model = "path-2w"
from = "first"
at = [1, 4.5]
""")
    return site


def crowded_plan(folder, count, seed):
    """Lights in clusters, all on one transformer, some of them linked in chains."""
    rng = random.Random(seed)
    lines = ['rillwatt = 1', '[site]', f'name = "Crowded {count}"',
             '[[circuit]]', 'id = "C1"', 'at = [0, 0]', '[[transformer]]', 'id = "T1"', 'circuit = "C1"',
             'model = "mag-300"', 'at = [2, 1]', '[[run]]', 'id = "A"', 'from = "T1"', 'tap = 13', 'cable = "12/2"']
    for i in range(count):
        if i % 6 == 0:
            cx, cy = rng.uniform(5, 75), rng.uniform(5, 50)
        feed = "A" if i % 6 == 0 else f"light-{i - 1}"
        lines += ['[[fixture]]', f'id = "light-{i}"', 'model = "path-2w"', f'from = "{feed}"',
                  f'at = [{cx + rng.uniform(-4, 4):.2f}, {cy + rng.uniform(-3, 3):.2f}]']
    site = folder / f"crowded-{count}.toml"
    site.write_text("\n".join(lines) + "\n")
    return site


HOSTILE = """<script>alert("x")</script> & 'co'"""
NO_XML = "\\uFFFE\\uFFFF"  # as TOML writes them: XML 1.0 (2.2) has no such characters
REPLACED = "\uFFFD\uFFFD"


def hostile_plan(folder):
    site = folder / "hostile.toml"
    name = HOSTILE.replace("\\", "\\\\").replace('"', '\\"') + NO_XML
    site.write_text(f"""rillwatt = 1
[site]
name = "{name}"
[[transformer]]
id = "T {name}"
model = "mag-150"
at = [0, 0]
control = "{name}"
[[run]]
id = "run {name}"
from = "T {name}"
tap = 12
cable = "12/2"
[[fixture]]
id = "light {name}"
model = "path-2w"
from = "run {name}"
at = [20, 10]
[[area]]
id = "area {name}"
kind = "bed"
outline = [[2, 2], [12, 2], [12, 8]]
[[viewpoint]]
id = "view {name}"
at = [5, 15]
eye = "5 ft"
""")
    return site


def main():
    program, source = sys.argv[1], Path(sys.argv[2])
    with tempfile.TemporaryDirectory() as temporary:
        folder = Path(temporary)
        sites = [source / "examples/fernhollow/site.toml", source / "examples/fernhollow-first-try/site.toml",
                 crowded_plan(folder, 24, 1), crowded_plan(folder, 60, 2), bare_plan(folder)]
        for site in sites:
            lights = ids_in(site, {"fixture"})
            plan = drawing(program, site)
            if plan:
                # The basin's four lights fan out from one hub: its trunk bears a tag and two of them.
                tags = plan.count('rw-run0" data-part="W1" data-box')
                check(tags == 3 if site == sites[0] else True, f"{site}: {tags} tags of run W1")
                # Sixty lights in heaps may leave a label or two without room; the plan must then say so.
                allowed = 2 if site.name == "crowded-60.toml" else 0
                root = check_plan(f"plan of {site.parent.name}/{site.name}", plan, lights, allowed)
                if site.name == "bare.toml":
                    check_north("bare.toml", root)
            diagram = drawing(program, site, "--diagram")
            if diagram:
                check_diagram(f"diagram of {site.parent.name}/{site.name}", diagram,
                              ids_in(site, {"fixture", "splice", "run", "transformer"}))
        for site, levels in ((sites[0], ("0.5", "1", "2", "5", "10", "20")),
                             (source / "examples/brookyard-metric/site.toml", ("0.5", "1", "2", "5", "10")),
                             (straight_walk(folder), ("0.5", "1", "2", "5"))):
            name = f"light of {site.parent.name}/{site.name}"
            lit = drawing(program, site, "--light")
            if lit:
                check("lx or more" in lit, f"{name}: no light on the plan that asks for it")
                check_light(name, lit, levels)
                root = check_plan(name, lit, ids_in(site, {"fixture"}))
                names = [label_places(d) for d in (drawing(program, site), lit)]
                check(names[0] == names[1], f"{name}: light moves the names")
                if site.name == "straight.toml":
                    check_north(name, root)
            section = light_section(program, site, folder)
            if section:
                check_light_section(f"section of {name}", section, levels)
        for options in ([], ["--diagram"], ["--light"]):
            text = drawing(program, hostile_plan(folder), *options)
            if text:
                check("<script" not in text, "a name became markup")
                root = ElementTree.fromstring(text)
                parts = {e.get("data-part") for e in root.iter() if e.get("data-part")}
                check(f"light {HOSTILE}{REPLACED}" in parts, f"the name of a part did not survive: {parts}")
    for problem in problems[:40]:
        print(problem)
    print(f"{len(problems)} problems")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main())
