"""The objective of docs/tuning.md, 'Slide settings', computed from lowledger.settings/1 alone.

Shares nothing with the program but the file: normal distribution from math.erf, lengths from the file's tube.
As a program: objective.py FILE prints the value before and after, and the file's own.
"""

import json
import math
import sys


def expected_cost(mean, spread, flat_weight):
    """E of x^2 where sharp and flat_weight x^2 where flat, for x normal with that mean and spread."""
    if spread == 0.0:
        return mean * mean * (1.0 if mean >= 0.0 else flat_weight)
    z = mean / spread
    sharp = 0.5 * math.erfc(-z / math.sqrt(2.0))
    density = math.exp(-0.5 * z * z) / math.sqrt(2.0 * math.pi)
    square = mean * mean + spread * spread
    return square * (sharp + flat_weight * (1.0 - sharp)) + (1.0 - flat_weight) * mean * spread * density


def length(settings, fingering, position_key):
    """Effective length in mm of a fingering with all slides at settings['slides'][...][position_key].

    On a hand slide in its plain position: the horn as designed, position - 1 semitones longer.
    """
    position, down = played(fingering)
    tube = settings["tube"]
    total = without_slides(tube, down) + without_slides(tube, down) * (2.0 ** ((position - 1) / 12.0) - 1.0)
    for slide in settings["slides"]:
        if slide["valve"] is None or slide["valve"] in down:
            total += slide["legs"] * slide["bore"] * (slide[position_key] - slide["designed_mm"])
    return total


def designed_length(settings, fingering):
    """The same with all slides where they were designed to stand."""
    position, down = played(fingering)
    return without_slides(settings["tube"], down) * 2.0 ** ((position - 1) / 12.0)


def played(fingering):
    """Position (1 without a hand slide) and the valves down, by their labels."""
    if fingering.startswith("p"):
        position, *valves = fingering[1:].split("+")
        return int(position), set(valves)
    return 1, set() if fingering == "0" else set(fingering)


def without_slides(tube, down):
    """Length in mm as designed, with these valves and the hand slide in."""
    total = tube["open_mm"]
    total += sum(valve["tube_mm"] for valve in tube["valves"] if valve["valve"] in down)
    return total + sum(loop["tube_mm"] for loop in tube["loops"] if set(loop["when"]) <= down)


def way_cost(settings, way, position_key):
    ratio = length(settings, way["fingering"], position_key) / length(settings, way["fingering"], "now_mm")
    lean = way["estimate_cents"] - 1200.0 * math.log2(ratio)
    cost = expected_cost(lean, way["spread_cents"], settings["constants"]["flat_weight"])
    return cost + way["penalty_square_cents"]


def objective(settings, position_key):
    """The objective's sum with the slides at now_mm or recommended_mm.

    As they stand the cheapest way counts for every note; as recommended the way chosen, which is dearer than
    the cheapest where that keeps the mean lean from being too sharp.
    """
    constants = settings["constants"]
    total = sum(
        constants["cost_per_cent_moved"] * slide["cents_per_mm"] * abs(slide[position_key] - slide["now_mm"])
        for slide in settings["slides"]
    )
    for note in settings["notes"]:
        costs = {way["fingering"]: way_cost(settings, way, position_key) for way in note["ways"]}
        cost = costs[note["fingering"]] if position_key == "recommended_mm" else min(costs.values())
        total += note["weight"] * cost
    return total


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        settings = json.load(file)
    told = settings["objective"]
    print("before", objective(settings, "now_mm"), told["before_square_cents"])
    print("after", objective(settings, "recommended_mm"), told["after_square_cents"])


if __name__ == "__main__":
    main()
