"""Writes cases.json: invented duct systems, solved by integrating the air's temperature along the ducts (Runge-Kutta of
fourth order, Simpson's rule for the heat that each place takes). Run: python3 generate.py > cases.json"""
import json
import random

STEPS = 400
CP, VAPOR = 0.24, 1061.0


def along(t, conductances, places, rate):
    """Temperature at the end, and the heat given to each place on the way."""
    slope = lambda u: -sum(g * (u - p["temperatureF"]) for g, p in zip(conductances, places)) / rate
    given = [0.0] * len(places)
    h = 1 / STEPS
    for _ in range(STEPS):
        k1 = slope(t)
        k2 = slope(t + h / 2 * k1)
        k3 = slope(t + h / 2 * k2)
        k4 = slope(t + h * k3)
        end = t + h / 6 * (k1 + 2 * k2 + 2 * k3 + k4)
        middle = (t + end) / 2 + h / 8 * (k1 - slope(end))
        for i, (g, p) in enumerate(zip(conductances, places)):
            given[i] += g * h * ((t + 4 * middle + end) / 6 - p["temperatureF"])
        t = end
    return t, given


def solve(s):
    places, heating = s["places"], s["mode"] == "heating"
    mass = 60 * s["fanFlowCfm"] * s["densityLbPerFt3"]
    rate = mass * CP
    latent = 0.0 if heating else VAPOR
    h = lambda t, w: CP * t + latent * w
    room = h(s["indoorTemperatureF"], s["indoorHumidityRatio"])
    leak_in = [p["returnLeakageCfm"] / s["fanFlowCfm"] for p in places]
    leak_out = [p["supplyLeakageCfm"] / s["fanFlowCfm"] for p in places]
    kept = 1 - sum(leak_in)
    t, return_given = along(s["indoorTemperatureF"], [p["returnConductance"] for p in places], places, rate)
    t = kept * t + sum(l * p["temperatureF"] for l, p in zip(leak_in, places))
    w = kept * s["indoorHumidityRatio"] + sum(l * p["humidityRatio"] for l, p in zip(leak_in, places))
    if heating:
        t += s["capacityBtuPerH"] / rate
    else:
        t -= s["sensibleHeatRatio"] * s["capacityBtuPerH"] / rate
        w -= (1 - s["sensibleHeatRatio"]) * s["capacityBtuPerH"] / (mass * VAPOR)
    t, supply_given = along(t, [p["supplyConductance"] for p in places], places, rate)
    sign = 1 if heating else -1
    above_room = sign * mass * (h(t, w) - room)
    delivered = (1 - sum(leak_out)) * above_room
    regained = sum(
        p["regain"] * (sign * supply + l * above_room + sign * (1 if heating else kept) * returned)
        for p, supply, returned, l in zip(places, supply_given, return_given, leak_out)
    )
    return {"registerF": t, "deliveredBtuPerH": delivered, "withRegainBtuPerH": delivered + regained}


def main():
    draw = random.Random(152)
    between = lambda a, b, digits: round(draw.uniform(a, b), digits)
    cases = []
    for number in range(24):
        heating = number % 2 == 0
        flow = between(500, 1800, 0)
        system = {
            "mode": "heating" if heating else "cooling",
            "fanFlowCfm": flow,
            "densityLbPerFt3": between(0.06, 0.078, 4),
            "indoorTemperatureF": between(66, 78, 1),
            "indoorHumidityRatio": between(0.004, 0.006, 5) if heating else between(0.008, 0.011, 5),
            "capacityBtuPerH": round(flow * (between(30, 60, 1) if heating else between(24, 33, 1))),
            "sensibleHeatRatio": 1 if heating else between(0.65, 0.95, 3),
            "places": [
                {
                    "temperatureF": between(-5, 60, 1) if heating else between(70, 130, 1),
                    "humidityRatio": between(0.001, 0.004, 5) if heating else between(0.009, 0.018, 5),
                    "regain": between(0, 1, 2),
                    "supplyConductance": between(0, 90, 1),
                    "returnConductance": between(0, 50, 1),
                    "supplyLeakageCfm": round(flow * between(0, 0.1, 3), 1),
                    "returnLeakageCfm": round(flow * between(0, 0.1, 3), 1),
                }
                for _ in range(1 + number // 2 % 3)
            ],
        }
        cases.append({"system": system, "expected": solve(system)})
    print(json.dumps(cases, indent=1))


main()
