"""Compares shortest trenches with those found by shapely (GEOS) on random plans.

The reference takes nothing from the program: it unites the closed areas, asks GEOS for every pair of corners
whether the segment enters the inside of the union, and runs Dijkstra over all of them.
Usage: shapely_cross_check.py PROBE
"""

import heapq
import math
import random
import subprocess
import sys

from shapely.geometry import LineString, Point, Polygon
from shapely.ops import unary_union
from shapely.prepared import prep


def star(rng, cx, cy, corners, low, high):
    """A polygon, concave as often as not, that does not cross itself."""
    angles = sorted(rng.uniform(0, 2 * math.pi) for _ in range(corners))
    if max((b - a) % (2 * math.pi) for a, b in zip(angles, angles[1:] + angles[:1])) > 3:
        angles = [2 * math.pi * k / corners for k in range(corners)]
    points = []
    for a in angles:
        r = rng.uniform(low, high)
        points.append((cx + r * math.cos(a), cy + r * math.sin(a)))
    if rng.random() < 0.5:
        points.reverse()
    return points


def slabs(rng, cx, cy):
    """Rectangles that share seams or touch in corners, turned by one angle."""
    turn = rng.uniform(0, math.pi)
    cos, sin = math.cos(turn), math.sin(turn)

    def turned(x, y):
        return (cx + x * cos - y * sin, cy + x * sin + y * cos)

    out = []
    for left, bottom in rng.sample([(0, 0), (1, 0), (0, 1), (1, 1), (2, 0), (2, 1)], rng.randint(2, 5)):
        out.append([turned(left, bottom), turned(left + 1, bottom), turned(left + 1, bottom + 1),
                    turned(left, bottom + 1)])
    return out


def make_plan(rng):
    areas = []
    for _ in range(rng.randint(2, 7)):
        cx, cy = rng.uniform(1, 11), rng.uniform(1, 11)
        if rng.random() < 0.3:
            areas += [("paving", s) for s in slabs(rng, cx, cy)]
        else:
            kind = rng.choice(["paving", "building", "water"])
            areas.append((kind, star(rng, cx, cy, rng.randint(3, 8), 0.6, 3)))
    places = [(rng.uniform(-1, 13), rng.uniform(-1, 13)) for _ in range(2)]
    if rng.random() < 0.2:  # a pond set in a terrace, with a light in it
        cx, cy = rng.uniform(3, 9), rng.uniform(3, 9)
        areas.append(("water", star(rng, cx, cy, 6, 0.8, 1.2)))
        areas.append(("paving", star(rng, cx, cy, 7, 1.5 if rng.random() < 0.5 else 2.5, 3)))
        places[1] = (cx, cy)
    sleeves = []
    if rng.random() < 0.4:
        sleeves.append([(rng.uniform(0, 12), rng.uniform(0, 12)), (rng.uniform(0, 12), rng.uniform(0, 12))])
    return places, areas, sleeves


def rank(kind):
    return {"paving": 0, "building": 1, "water": 2}[kind]


def barred_ground(places, areas):
    """The union that this route may not enter: water opens to an end that lies in it."""
    shapes = [(kind, Polygon(points)) for kind, points in areas]
    everything = unary_union([s for _, s in shapes])
    opened = set()
    for place in places:
        here = [i for i, (_, s) in enumerate(shapes) if s.covers(Point(place))]
        water = [i for i in here if shapes[i][0] == "water"]
        if water:
            opened.update(water)
        elif everything.contains(Point(place)):
            opened.update(here)
    barred = unary_union([s for i, (_, s) in enumerate(shapes) if i not in opened])
    for i in opened:
        above = [s for j, (k, s) in enumerate(shapes) if j not in opened and rank(k) > rank(shapes[i][0])]
        free = shapes[i][1]
        if above:
            free = free.difference(unary_union(above))
        barred = barred.difference(free)
    return barred


def corners_of(shape):
    for polygon in getattr(shape, "geoms", [shape]):
        if polygon.geom_type != "Polygon":
            continue
        for ring in [polygon.exterior, *polygon.interiors]:
            yield from list(ring.coords)[:-1]


def shortest(places, barred, sleeves):
    points = list(places) + [end for s in sleeves for end in s] + list(corners_of(barred))
    # GEOS rounds the points where outlines cross: what lies that deep inside is on the outline.
    core = prep(barred.buffer(-1e-7))
    best = [math.inf] * len(points)
    best[0] = 0
    queue = [(0, 0)]
    while queue:
        length, i = heapq.heappop(queue)
        if length > best[i]:
            continue
        if i == 1:
            return length
        for j, q in enumerate(points):
            step = math.dist(points[i], q)
            if length + step >= best[j]:
                continue
            piped = i >= 2 and j >= 2 and i < 2 + 2 * len(sleeves) and (i - 2) // 2 == (j - 2) // 2
            if not piped and step > 0 and core.intersects(LineString([points[i], q])):
                continue
            best[j] = length + step
            heapq.heappush(queue, (best[j], j))
    return None


def plan_text(places, areas, sleeves):
    words = [*places[0], *places[1], len(areas), len(sleeves)]
    for kind, points in areas:
        words += [kind, len(points)] + [c for p in points for c in p]
    for a, b in sleeves:
        words += [*a, *b]
    return " ".join(w if isinstance(w, str) else repr(w) for w in words)


def nearly_touching(places, areas, sleeves):
    """Corners and ends within a finger of an outline, which this program takes to be meant to lie on it."""
    shapes = [Polygon(p) for _, p in areas]
    for i, (_, points) in enumerate(areas):
        for k, shape in enumerate(shapes):
            if i != k and any(1e-6 < shape.exterior.distance(Point(p)) < 0.004 for p in points):
                return True
    points = list(places) + [end for s in sleeves for end in s]
    return any(shape.exterior.distance(Point(p)) < 0.004 for shape in shapes for p in points)


def main():
    rng = random.Random(4711)
    plans = []
    while len(plans) < 150:
        plan = make_plan(rng)
        if all(Polygon(p).is_valid for _, p in plan[1]) and not nearly_touching(*plan):
            plans.append(plan)
    text = "\n".join(plan_text(*p) for p in plans) + "\n"
    answers = subprocess.run([sys.argv[1]], input=text, text=True, capture_output=True, check=True).stdout.split()
    wrong = bent = no_way = opened = 0
    for number, (plan, answer) in enumerate(zip(plans, answers)):
        places, areas, sleeves = plan
        expected = shortest(places, barred_ground(places, areas), sleeves)
        no_way += expected is None
        bent += expected is not None and expected > math.dist(*places) + 1e-6
        opened += any(Polygon(p).covers(Point(q)) for _, p in areas for q in places)
        same = answer == "none" if expected is None else answer != "none" and abs(float(answer) - expected) < 1e-4
        if not same:
            wrong += 1
            print(f"plan {number}: program {answer}, shapely {expected}\n  {plan_text(*plan)}")
    print(f"{len(plans)} plans, {bent} with a bend, {opened} with an end in an area, {no_way} without a way; "
          f"{wrong} disagree")
    if bent < 50 or no_way < 5 or opened < 40 or len(answers) != len(plans):
        print("the plans do not exercise enough")
        wrong += 1
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
