"""Change-point fits by another road: every balance temperature on a fine grid, least squares by numpy, the best point
polished by Nelder and Mead from scipy. Nothing of the project is used. Writes cases.json.

    python3 generate.py
"""

import itertools
import json

import numpy as np
from scipy.optimize import minimize

DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
MEANS = {
    "cold": [18.9, 23.1, 34.6, 47.8, 59.2, 68.7, 73.5, 71.2, 62.9, 50.4, 37.1, 24.6],
    "mixed": [38.2, 41.9, 50.3, 59.4, 67.5, 75.2, 78.8, 77.6, 71.3, 60.5, 50.2, 41.4],
    "hot": [53.1, 56.8, 63.2, 69.9, 76.7, 82.1, 84.2, 84.0, 79.8, 71.6, 62.3, 55.4],
}
CASES = [
    ("gas, cold place", "cold", "heating", dict(base=1.1, heating=(0.14, 60.0)), 0.06, 1),
    ("gas, mixed place, daily temperatures", "mixed", "heating", dict(base=0.9, heating=(0.11, 62.0)), 0.08, 2),
    ("air conditioner, hot place", "hot", "cooling", dict(base=21.0, cooling=(1.9, 68.0)), 0.05, 3),
    ("heat pump, mixed place, daily temperatures", "mixed", "both", dict(base=18.0, heating=(0.9, 55.0), cooling=(1.4, 69.0)), 0.03, 4),
]


def make(place, truth, noise, rng, daily):
    periods = []
    for days, mean in zip(DAYS, MEANS[place]):
        temperatures = np.round(rng.normal(mean, 7.0, days), 1) if daily else np.array([mean])
        use = truth["base"]
        if "heating" in truth:
            use = use + truth["heating"][0] * np.maximum(0, truth["heating"][1] - temperatures).mean()
        if "cooling" in truth:
            use = use + truth["cooling"][0] * np.maximum(0, temperatures - truth["cooling"][1]).mean()
        use = round(float(use * days * (1 + rng.normal(0, noise))), 1)
        period = {"days": days, "use": use}
        if daily:
            period["dailyTemperaturesF"] = temperatures.tolist()
        else:
            period["meanTemperatureF"] = mean
        periods.append(period)
    return periods


def temperatures_of(period):
    return np.array(period.get("dailyTemperaturesF", [period.get("meanTemperatureF")]))


def fit_at(periods, heating, cooling):
    columns = [np.ones(len(periods))]
    if heating is not None:
        columns.append(np.array([np.maximum(0, heating - temperatures_of(p)).mean() for p in periods]))
    if cooling is not None:
        columns.append(np.array([np.maximum(0, temperatures_of(p) - cooling).mean() for p in periods]))
    design = np.stack(columns, axis=1)
    use = np.array([p["use"] / p["days"] for p in periods])
    weight = np.array([p["days"] for p in periods], float)
    weight *= len(periods) / weight.sum()
    root = np.sqrt(weight)
    solution, *_ = np.linalg.lstsq(design * root[:, None], use * root, rcond=None)
    misses = use - design @ solution
    bad = any(slope < 0 for slope in solution[1:])
    return (np.inf if bad else float((weight * misses**2).sum())), solution, use, weight


def search(periods, model):
    means = sorted(temperatures_of(p).mean() for p in periods)
    low, high = means[1], means[-2]
    axis = np.arange(low, high, 0.25)
    grid = itertools.combinations(axis, 2) if model == "both" else ((t,) for t in axis)

    def squares(point):
        if not all(low <= t <= high for t in point) or list(point) != sorted(point):
            return np.inf
        heating = point[0] if model != "cooling" else None
        cooling = point[-1] if model != "heating" else None
        return fit_at(periods, heating, cooling)[0]

    starts = sorted(grid, key=squares)[:12]
    options = dict(xatol=1e-10, fatol=1e-16, maxiter=20000, maxfev=20000)
    best = min((minimize(squares, s, method="Nelder-Mead", options=options) for s in starts), key=lambda r: r.fun)
    return tuple(best.x)


cases = []
for title, place, model, truth, noise, seed in CASES:
    rng = np.random.default_rng(seed)
    periods = make(place, truth, noise, rng, "daily" in title)
    point = search(periods, model)
    heating = point[0] if model != "cooling" else None
    cooling = point[-1] if model != "heating" else None
    squares, solution, use, weight = fit_at(periods, heating, cooling)
    parameters = 5 if model == "both" else 3
    mean = float((weight * use).sum() / weight.sum())
    slopes = list(solution[1:])
    expected = {
        "baseUsePerDay": solution[0],
        "cvRmse": np.sqrt(squares / (len(periods) - parameters)) / mean,
        "rSquared": 1 - squares / float((weight * (use - mean) ** 2).sum()),
    }
    if heating is not None:
        expected |= {"heatingSlope": slopes.pop(0), "balanceHeatingF": heating}
    if cooling is not None:
        expected |= {"coolingSlope": slopes.pop(0), "balanceCoolingF": cooling}
    cases.append({"title": title, "model": model, "periods": periods, "expected": {k: float(v) for k, v in expected.items()}})

with open("cases.json", "w") as file:
    json.dump(cases, file, indent=None, separators=(",", ":"))
    file.write("\n")
for case in cases:
    print(case["title"], {k: round(v, 5) for k, v in case["expected"].items()})
