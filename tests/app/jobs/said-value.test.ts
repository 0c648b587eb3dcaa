import { describe, expect, test } from "vitest";
import { sayValue } from "#app/jobs/trip/said-value.ts";
import { unitText } from "#lib/units/unit-text.ts";

describe("a value of a job in words", () => {
  test.each([
    ["#/house/builtYear", 1975, "yr", "1975"],
    ["#/rates/measureLifeYears", 18, "yr", "18 years"],
    ["#/systems/0/blower/control", "fixed-speed", "", "fixed speed"],
    ["#/systems/1/cooling/staging", "single", "", "one"],
    ["#/plan/offersSprayedSealant", false, "", "no"],
    ["#/plan/targetId", "iecc-2021-total", "", "iecc-2021-total"],
    ["#/house/coolingHumidityShare", 0.5, "share", "50%"],
    ["#/rates/fuelEscalationRate", 0.005, "ratio", "0.5%"],
    ["#/places/0/regainFactor", 0.1, "ratio", "0.1"],
    ["#/rates/electricityUsdPerKWh", 0.163, "USD/kWh", "$0.163/kWh"],
    ["#/systems/0/runs/0/insulationRValue", 4.2, "h·ft²·°F/Btu", "R-4.2"],
    ["#/systems/0/blower/fanFlowCfm", 1120, "cfm", "1,120 cfm"],
  ] as const)("%s: %s %s is said as %s", (path, value, unit, words) => {
    expect(sayValue({ path, value, unit }, unitText("us"))).toBe(words);
  });
});
