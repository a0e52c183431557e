"""What a pull of 10 mm does to partials 3 to 8, by a one-dimensional transmission line against the model.

The line: a mouthpiece, a bore of short cones with wall losses, a bell and the radiation of an open end (transfer matrices
of plane waves in cones: A. H. Benade, "On the propagation of sound waves in a cylindrical conduit", J. Acoust. Soc. Am. 44,
1968, for the losses; R. Causse, J. Kergomard, X. Lurton, "Input impedance of brass musical instruments", J. Acoust. Soc. Am.
75, 1984, for the matrices; H. Levine, J. Schwinger, Phys. Rev. 73, 1948, low-frequency limit, for the open end; all from
memory). The bores are invented: they are simple shapes of the sizes that such horns have, not any maker's.

The model is asked through the program given as the first argument; it knows only the length of tube, c/(2 f1), f1 being the
mean of f_n/n over partials 2 to 8.

usage: pull_by_transmission_line.py PROGRAM
"""

import subprocess
import sys

import numpy as np
from scipy.optimize import minimize_scalar
from scipy.signal import find_peaks

SPEED = 343.987  # m/s, air at 20 C, 50 % relative humidity
DENSITY = 1.2  # kg/m3
PULL = 0.010  # m
SLIDE = 0.10  # m, the tube of the slide pushed in
PARTIALS = range(3, 9)


def wave_number(frequency, radius):
    """Complex wave number with the losses at the wall of a tube of `radius`."""
    loss = 3.0e-5 * np.sqrt(frequency) / radius
    return 2 * np.pi * frequency / SPEED + (1 - 1j) * loss


def cone(frequency, length, inlet, outlet):
    """Transfer matrix (pressure, flow) of a truncated cone, or of a cylinder where both radii agree."""
    mean = (inlet + outlet) / 2
    k = wave_number(frequency, mean)
    sin, cos = np.sin(k * length), np.cos(k * length)
    if abs(outlet - inlet) < 1e-9:
        z = DENSITY * SPEED / (np.pi * inlet**2)
        return np.array([[cos, 1j * z * sin], [1j * sin / z, cos]])
    x1 = inlet * length / (outlet - inlet)
    x2 = x1 + length
    z1 = DENSITY * SPEED / (np.pi * inlet**2)
    a = (x2 * cos - sin / k) / x1
    b = 1j * z1 * (x1 / x2) * sin
    c = 1j / z1 * ((x2 / x1 + 1 / (k * x1) ** 2) * sin - length * cos / (k * x1**2))
    d = (x1 / x2) * (cos + sin / (k * x1))
    return np.array([[a, b], [c, d]])


def radiation(frequency, radius):
    k = 2 * np.pi * frequency / SPEED
    return DENSITY * SPEED / (np.pi * radius**2) * ((k * radius) ** 2 / 4 + 0.6133j * k * radius)


def input_impedance(frequency, bore):
    """`bore`: (length, inlet radius, outlet radius) from the mouthpiece to the bell."""
    z = radiation(frequency, bore[-1][2])
    for length, inlet, outlet in reversed(bore):
        m = cone(frequency, length, inlet, outlet)
        z = (m[0, 0] * z + m[0, 1]) / (m[1, 0] * z + m[1, 1])
    return z


def impedance_peaks(bore, lowest, highest):
    grid = np.arange(lowest, highest, 0.5)
    size = np.abs(input_impedance(grid, bore))
    peaks = []
    for at in find_peaks(size)[0]:
        found = minimize_scalar(
            lambda f: -abs(input_impedance(np.array([f]), bore)[0]),
            bounds=(grid[at - 1], grid[at + 1]), method="bounded", options={"xatol": 1e-6})
        peaks.append(found.x)
    return np.array(peaks)


def mouthpiece(cup_depth, cup, throat, shank, length):
    return [(cup_depth, cup, cup), (0.004, throat, throat), (length, throat, shank)]


def bell(length, inlet, outlet, flare, pieces=60):
    """A Bessel horn r = b (x0 - x)^-flare from `inlet` to `outlet`, as short cones."""
    ratio = (outlet / inlet) ** (1 / flare)
    near = length / (ratio - 1)
    x = np.linspace(near + length, near, pieces + 1)
    r = outlet * (x / near) ** -flare
    return [(x[i] - x[i + 1], r[i], r[i + 1]) for i in range(pieces)]


def cylinder(length, radius):
    return [(length, radius, radius)]


# Each: mouthpiece, cylinder before the tuning slide, its radius, bell. The flares were chosen so that partials 2 to 8 stand
# near one common fundamental, which is what makers aim at and what the model takes for granted.
HORNS = {
    "trombone": (mouthpiece(0.022, 0.0125, 0.0032, 0.0058, 0.06), cylinder(1.45, 0.0069), 0.0069,
                 bell(1.20, 0.0069, 0.105, 0.85)),
    "euphonium": (mouthpiece(0.026, 0.0128, 0.0033, 0.0060, 0.065), cylinder(1.15, 0.0072), 0.0072,
                  bell(1.50, 0.0072, 0.14, 0.80)),
    "tuba": (mouthpiece(0.032, 0.0160, 0.0041, 0.0070, 0.07), cylinder(2.30, 0.0095), 0.0095,
             bell(3.00, 0.0095, 0.19, 1.00)),
}
# A single partial may miss by as much as the tuning model's spread of a slide's effect, of 0.08.
SINGLE_PARTIAL = 0.08
NEARLY_HARMONIC = 20  # cents, standard deviation of partials 2 to 8 from their common fundamental


def shifts_by_line(horn):
    """Cents that each of partials 3 to 8 moves, and the length in use, c/(2 f1)."""
    start, before, radius, behind = horn
    length = sum(part[0] for part in start + before + behind)
    lowest, highest = 0.5 * SPEED / (2 * length), 11 * SPEED / (2 * length)
    slide_in = impedance_peaks(start + before + [(SLIDE, radius, radius)] + behind, lowest, highest)
    slide_out = impedance_peaks(start + before + [(SLIDE + 2 * PULL, radius, radius)] + behind, lowest, highest)
    # The first peak of a horn lies far below the common fundamental; partial n is the n-th peak all the same.
    fundamental = np.mean([slide_in[n - 1] / n for n in range(2, 9)])
    shifts = [1200 * np.log2(slide_out[n - 1] / slide_in[n - 1]) for n in PARTIALS]
    return np.array(shifts), SPEED / (2 * fundamental), slide_in


def shift_by_model(program, length):
    answer = subprocess.run([program, f"{length * 1000:.6f}", f"{PULL * 1000:.6f}"],
                            check=True, capture_output=True, text=True)
    return float(answer.stdout)


def main():
    program = sys.argv[1]
    failed = False
    for name, horn in HORNS.items():
        shifts, length, peaks = shifts_by_line(horn)
        model = shift_by_model(program, length)
        off = np.mean(shifts) / model - 1
        single = np.mean(np.abs(shifts / model - 1))
        harmonic = [1200 * np.log2(peaks[n - 1] / n * 2 * length / SPEED) for n in range(2, 9)]
        print(f"{name}: length {length:.3f} m; partials 2 to 8 against their common fundamental, cents: "
              + ", ".join(f"{c:+.0f}" for c in harmonic))
        print(f"  10 mm move partials 3 to 8 by {', '.join(f'{s:.2f}' for s in shifts)}; mean {np.mean(shifts):.3f}, "
              f"model {model:.3f}: {100 * off:+.1f} %, a single partial {100 * single:.1f} % off on average")
        failed = failed or abs(off) > 0.05 or single > SINGLE_PARTIAL or np.std(harmonic) > NEARLY_HARMONIC
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
