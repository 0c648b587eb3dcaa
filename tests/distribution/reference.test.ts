import { describe, expect, it } from "vitest";
import { deliveredWithRegain } from "#lib/distribution/air-path.ts";
import { expectClose } from "#tests/expect-close.ts";
import cases from "#tests/reference/ashrae-152/cases.json" with { type: "json" };
import { follow } from "./configurations.ts";
import type { MarchedSystem } from "./marching-balance.ts";

const integrated = { relativeTolerance: 1e-9, reason: "fourth-order integration in 400 steps" } as const;

describe("ashrae-152 (form of), balance integrated outside this project: followHeating and followCooling", () => {
  it.each(
    cases.map(
      ({ system, expected }, index) => [index + 1, system.mode, system.places.length, system, expected] as const,
    ),
  )("case %i, %s, %i places", (_, _mode, _count, system, expected) => {
    const whole: MarchedSystem = {
      ...system,
      mode: system.mode === "heating" ? "heating" : "cooling",
      outdoorTemperatureF: 40,
      outdoorHumidityRatio: 0.004,
      extraInfiltrationCfm: 0,
      leaks: "at-the-end",
      piecesCount: 1,
    };
    const path = follow(whole);
    const scale = system.capacityBtuPerH;
    expectClose({ actual: path.deliveredBtuPerH, expected: expected.deliveredBtuPerH, scale, ...integrated });
    expectClose({ actual: deliveredWithRegain(path), expected: expected.withRegainBtuPerH, scale, ...integrated });
    expectClose({ actual: path.registerF, expected: expected.registerF, scale: 100, ...integrated });
  });

  it("covers heating and cooling in one, two and three places", () => {
    expect(new Set(cases.map(({ system }) => `${system.mode} ${system.places.length}`)).size).toBe(6);
  });
});
