"""The profile against plain dense conditioning in NumPy.

The program given as the first argument prints readings and predictions as sums of unknowns. Here every unknown of every
day is a normal variable of its own; the joint covariance of all is written out, and readings and predictions are
conditioned by the textbook formula for jointly normal vectors (C. E. Rasmussen, C. K. I. Williams, "Gaussian Processes for
Machine Learning", 2006, equation A.6), with a general solver. None of the program's algebra is used.

usage: dense_conditioning.py PROGRAM
"""

import json
import subprocess
import sys

import numpy as np

MOST = 1e-9
KINDS = ("as_played", "placed", "for_slides", "aim")


def unknowns_of(world):
    """Every (unknown, days ago) with its spread and half-life; predictions are of today."""
    laws = {}
    todays = [(0, p["terms"]) for kind in KINDS for p in world[kind]]
    for days, terms in [(r["days"], r["terms"]) for r in world["readings"]] + todays:
        for term in terms:
            # What does not age is one variable whatever the day.
            key = (tuple(term["unknown"]), days if term["half_life"] > 0 else 0)
            law = (term["spread"], term["half_life"])
            assert laws.setdefault(key, law) == law, f"{key} has two laws"
    return laws


def covariance_of(laws):
    keys = list(laws)
    covariance = np.zeros((len(keys), len(keys)))
    for i, (one, day_one) in enumerate(keys):
        for j, (other, day_other) in enumerate(keys):
            if one == other:
                spread, half_life = laws[keys[i]]
                kept = 2.0 ** (-abs(day_one - day_other) / half_life) if half_life > 0 else 1.0
                covariance[i, j] = spread**2 * kept
    return keys, covariance


def design(sums, keys):
    place = {key: i for i, key in enumerate(keys)}
    matrix = np.zeros((len(sums), len(keys)))
    for i, (days, terms) in enumerate(sums):
        for term in terms:
            key = (tuple(term["unknown"]), days if term["half_life"] > 0 else 0)
            matrix[i, place[key]] += term["coefficient"]
    return matrix


def condition(world):
    keys, covariance = covariance_of(unknowns_of(world))
    readings = design([(r["days"], r["terms"]) for r in world["readings"]], keys)
    off = np.array([r["off"] for r in world["readings"]])
    joint = readings @ covariance @ readings.T + np.diag([r["noise"] for r in world["readings"]])
    found = {}
    for kind in KINDS:
        predicted = design([(0, p["terms"]) for p in world[kind]], keys)
        expected = np.array([p["expected"] for p in world[kind]])
        cross = predicted @ covariance @ readings.T
        gain = np.linalg.solve(joint, cross.T).T if len(off) else np.zeros((len(expected), 0))
        before = predicted @ covariance @ predicted.T
        found[kind] = (expected + gain @ off, before - gain @ cross.T, before, predicted, gain)
    played = found["as_played"]
    slides = found["for_slides"]
    between = slides[3] @ covariance @ played[3].T - slides[4] @ readings @ covariance @ played[3].T
    return found, between


def differences(world):
    found, between = condition(world)
    played, placed, slides, aim = (found[kind] for kind in KINDS)
    notes = world["profile"]["notes"]

    def told(name):
        return np.array([note[name] for note in notes])

    size = len(notes)
    yield "mean", np.max(np.abs(told("mean") - played[0]))
    yield "spread", np.max(np.abs(told("spread") ** 2 - np.diag(played[1])))
    yield "slides mean", np.max(np.abs(told("slides_mean") - slides[0]))
    yield "placed", np.max(np.abs(told("placed") - placed[0]))
    yield "aim", np.max(np.abs(told("aim") - aim[0]))
    share = 1 - np.diag(played[1]) / np.diag(played[2])
    yield "share of data", np.max(np.abs(told("share_of_data") - share))
    covariance = np.array(world["profile"]["slides_covariance"]).reshape(size, size)
    yield "slides covariance", np.max(np.abs(covariance - slides[1]))
    with_reading = np.array(world["slides_by_reading"]).reshape(size, size)
    yield "slides with a reading", np.max(np.abs(with_reading - between))


def main():
    worlds = json.loads(subprocess.run([sys.argv[1]], check=True, capture_output=True, text=True).stdout)
    failures = 0
    for name, world in worlds.items():
        for what, difference in differences(world):
            bad = not difference <= MOST
            failures += bad
            print(f"{name}: {what}: {difference:.2e} cents or cents squared{'  TOO FAR' if bad else ''}")
    assert len(worlds) >= 5 and any(len(world["readings"]) > 20 for world in worlds.values())
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
