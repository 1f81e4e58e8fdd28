"""Grids of values, worked out by the built program and by general-purpose libraries, compared point by point.

Usage: grids.py PATH-TO-BENCHLEAF. Libraries: PsychroLib (moist air, after the ASHRAE handbook), colour-science (CIEDE2000, sRGB),
networkx (longest paths). Exit status 1 when any point differs by more than its tolerance.
"""

import json
import math
import random
import re
import subprocess
import sys
import urllib.request

import colour
import networkx
import numpy
import psychrolib

psychrolib.SetUnitSystem(psychrolib.SI)
SEA_LEVEL = 101325


class Handbook:
    """The program, serving on a free port."""

    def __init__(self, binary):
        self.process = subprocess.Popen([binary, "serve", "--port", "0"], stdout=subprocess.PIPE, text=True)
        self.address = re.search(r"http://\S+/", self.process.stdout.readline()).group(0)

    def ask(self, calculator, value):
        request = urllib.request.Request(
            f"{self.address}api/calculators/{calculator}?units=metric",
            data=json.dumps(value).encode(),
            headers={"Content-Type": "application/json"},
        )
        with urllib.request.urlopen(request) as reply:
            return json.load(reply)["result"]

    def close(self):
        self.process.terminate()
        self.process.wait()


def moist_air(handbook):
    """Dew point, humidity ratio, wet bulb and saturation over temperature and humidity."""
    for celsius in numpy.arange(-10, 45.1, 2.5):
        for humidity in range(5, 100, 5):
            ours = handbook.ask("air-state", {"temperature": float(celsius), "relative_humidity": humidity})
            share = humidity / 100
            yield "dew point", ours["dew_point"]["value"], psychrolib.GetTDewPointFromRelHum(celsius, share), 0.02
            yield "humidity ratio", ours["humidity_ratio"], psychrolib.GetHumRatioFromRelHum(celsius, share, SEA_LEVEL), 2e-6
            yield "wet bulb", ours["wet_bulb"]["value"], psychrolib.GetTWetBulbFromRelHum(celsius, share, SEA_LEVEL), 0.02
            yield "saturation", ours["saturation"]["value"] * 100, psychrolib.GetSatVapPres(celsius), 0.05


def colour_differences(handbook):
    """CIEDE2000 of random pairs, near ones and far ones; pairs on the jump between opposite hues are left out."""
    chance = random.Random(20260101)
    for number in range(1500):
        one = [chance.uniform(5, 98), chance.uniform(-90, 90), chance.uniform(-90, 90)]
        reach = 3 if number % 2 else 60
        other = [min(100, max(0, one[0] + chance.uniform(-reach, reach)))] + [axis + chance.uniform(-reach, reach) for axis in one[1:]]
        hues = [math.degrees(math.atan2(lab[2], lab[1])) for lab in (one, other)]
        if abs(abs(hues[0] - hues[1]) - 180) < 1:
            continue
        asked = {"one": dict(zip("lab", one)), "other": dict(zip("lab", other))}
        ours = handbook.ask("colour-difference", asked)["difference"]["value"]
        yield "CIEDE2000", ours, float(colour.delta_E(numpy.array(one), numpy.array(other), method="CIE 2000")), 1e-4


def screen_colours(handbook):
    """L*a*b* and reflectance of screen colours; four-digit matrices differ by up to 0.03."""
    chance = random.Random(7)
    for _ in range(300):
        rgb = [chance.randrange(256) for _ in range(3)]
        ours = handbook.ask("colour-values", {"colour": "".join(f"{channel:02X}" for channel in rgb)})
        xyz = colour.sRGB_to_XYZ(numpy.array(rgb) / 255)
        lab = colour.XYZ_to_Lab(xyz, colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]["D65"])
        for axis, name in enumerate(("lightness", "a", "b")):
            yield f"sRGB {name}", ours[name]["value"], float(lab[axis]), 0.05
        yield "reflectance", ours["reflectance"]["value"], float(xyz[1]) * 100, 0.02


def networks(handbook):
    """Duration and floats of random programmes against longest paths."""
    chance = random.Random(11)
    for _ in range(60):
        count = chance.randrange(3, 25)
        hours = [chance.randrange(1, 40) / 4 for _ in range(count)]
        graph = networkx.DiGraph()
        tasks = []
        for task in range(count):
            after = [other for other in range(task) if chance.random() < 2.5 / count]
            waits = {other: chance.randrange(0, 20) / 2 for other in after}
            tasks.append({"name": f"t{task}", "hours": hours[task], "after": [{"task": f"t{other}", "wait": wait} for other, wait in waits.items()]})
            graph.add_edge("start", f"{task} s", weight=0)
            graph.add_edge(f"{task} s", f"{task} f", weight=hours[task])
            graph.add_edge(f"{task} f", "end", weight=0)
            for other, wait in waits.items():
                graph.add_edge(f"{other} f", f"{task} s", weight=wait)
        ours = handbook.ask("critical-path", {"tasks": tasks})
        longest = networkx.dag_longest_path_length(graph, weight="weight")
        yield "network duration", ours["duration"]["value"], longest, 1e-6
        to_end = {}
        for node in reversed(list(networkx.topological_sort(graph))):
            to_end[node] = max((graph[node][after]["weight"] + to_end[after] for after in graph[node]), default=0)
        for task in range(count):
            row = ours["tasks"][task]
            yield "network float", row["float"]["value"], longest - to_end[f"{task} s"] - row["earliest_start"]["value"], 1e-6


def main():
    handbook = Handbook(sys.argv[1])
    worst, counts, different = {}, {}, []
    try:
        for grid in (moist_air, colour_differences, screen_colours, networks):
            before = sum(counts.values())
            for name, ours, theirs, tolerance in grid(handbook):
                apart = abs(ours - theirs)
                counts[name] = counts.get(name, 0) + 1
                worst[name] = max(worst.get(name, 0.0), apart)
                if not apart <= tolerance:
                    different.append(f"{name}: ours {ours}, theirs {theirs}, difference {apart}, allowed {tolerance}")
            if sum(counts.values()) == before:
                different.append(f"{grid.__name__}: no point was compared")
    finally:
        handbook.close()
    for name, count in counts.items():
        print(f"{name:18} {count:6} points, worst difference {worst[name]:.3g}")
    print("\n".join(different[:20]))
    return 1 if different else 0


if __name__ == "__main__":
    sys.exit(main())
