"""Times SciPy's general solver against the program on the same settings: same beliefs, objective and slides.

Usage: settings_by_scipy.py path/to/lowledger-batch. Prints, for some horns and levels, the objective and the CPU
time of both. The program's time is of its whole run: it starts, reads the sheet, forms the profile, searches,
certifies, which can be most of it, and writes the file; `settings_one` of bench_tuning times its search alone. SciPy's
is of the search alone (L-BFGS-B, twelve starts, derivatives by differences, the objective in NumPy over all notes at
once). Never a verdict: run it by hand.
"""

import json
import pathlib
import resource
import subprocess
import sys
import tempfile
import time

import numpy
from scipy.optimize import minimize
from scipy.special import ndtr

sys.path.insert(0, str(pathlib.Path(__file__).parents[1] / "app/batch"))
from objective import length, played  # noqa: E402

SHEET = """note,fingering,cents,take
Bb1,0,42,1
A1,2,34,1
Ab1,1,29,1
Gb1,23,24,1
C2,4,31,1
F2,0,41,1
Bb2,0,36,1
Db2,23,26,1
"""
SLIDES = "slide,position,least,travel\nmain,20,,\nfirst,10,,\nsecond,5,,\nthird,25,,\nfourth,15,,\n"
GUARD = 1e4
STARTS = 12


def settings_of(program, level):
    with tempfile.TemporaryDirectory() as folder:
        sheet = pathlib.Path(folder) / "sheet.csv"
        slides = pathlib.Path(folder) / "slides.csv"
        sheet.write_text(SHEET, encoding="utf-8")
        slides.write_text(SLIDES, encoding="utf-8")
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        run = subprocess.run(
            [program, "settings", "--sheet", sheet, "--slides", slides, "--kind", "bbb-tuba-4", "--level", level,
             "--step", "0", "--json"],
            check=True, capture_output=True, text=True)
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
    taken = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return json.loads(run.stdout), taken


class Problem:
    """The guarded objective over the slides that the program moved, the others as they stand."""

    def __init__(self, settings):
        constants = settings["constants"]
        self.flat_weight = constants["flat_weight"]
        self.most_mean_sharp = constants["most_mean_sharp_cents"]
        slides = [slide for slide in settings["slides"] if slide["advice"] == "move"]
        self.now = numpy.array([slide["now_mm"] for slide in slides])
        self.bounds = [(min(slide["least_mm"], slide["now_mm"]), slide["travel_mm"]) for slide in slides]
        self.cost = numpy.array([constants["cost_per_cent_moved"] * slide["cents_per_mm"] for slide in slides])
        self.recommended = numpy.array([slide["recommended_mm"] for slide in slides])
        ways, self.first, self.weight = [], [], []
        for note in settings["notes"]:
            if note["weight"] == 0.0:
                continue
            self.first.append(len(ways))
            self.weight.append(note["weight"])
            ways += note["ways"]
        self.weight = numpy.array(self.weight)
        self.mean = numpy.array([way["estimate_cents"] for way in ways])
        self.spread = numpy.array([way["spread_cents"] for way in ways])
        self.penalty = numpy.array([way["penalty_square_cents"] for way in ways])
        self.length = numpy.array([length(settings, way["fingering"], "now_mm") for way in ways])
        self.pull = numpy.array(
            [[slide["legs"] * slide["bore"]
              if slide["valve"] is None or slide["valve"] in played(way["fingering"])[1] else 0.0
              for slide in slides] for way in ways])
        self.ends = numpy.append(self.first[1:], len(ways))

    def __call__(self, at):
        lean = self.mean - 1200.0 * numpy.log2(1.0 + self.pull @ (at - self.now) / self.length)
        z = lean / self.spread
        sharp = ndtr(z)
        density = numpy.exp(-0.5 * z * z) / numpy.sqrt(2.0 * numpy.pi)
        cost = (lean**2 + self.spread**2) * (sharp + self.flat_weight * (1.0 - sharp))
        cost += (1.0 - self.flat_weight) * lean * self.spread * density + self.penalty
        chosen = [first + numpy.argmin(cost[first:end]) for first, end in zip(self.first, self.ends)]
        over = max(0.0, self.weight @ lean[chosen] - self.most_mean_sharp)
        return self.weight @ cost[chosen] + self.cost @ numpy.abs(at - self.now) + GUARD * over**2


def by_scipy(problem):
    random = numpy.random.default_rng(1)
    low, high = numpy.array(problem.bounds).T
    starts = [problem.now] + [random.uniform(low, high) for _ in range(STARTS - 1)]
    before = time.process_time()
    best = min(minimize(problem, start, method="L-BFGS-B", bounds=problem.bounds,
                        options={"ftol": 1e-10, "gtol": 1e-8}).fun for start in starts)
    return best, time.process_time() - before


def main():
    for level in ("beginner", "middle", "advanced"):
        settings, taken = settings_of(sys.argv[1], level)
        problem = Problem(settings)
        if problem.now.size == 0:
            print(f"{level}: nothing moves")
            continue
        best, by_solver = by_scipy(problem)
        print(f"{level}: {problem.now.size} slides move; program {settings['objective']['after_square_cents']:.6f} in "
              f"{1000 * taken:.1f} ms, everything; SciPy {best:.6f} in {1000 * by_solver:.1f} ms, search alone")


if __name__ == "__main__":
    main()
