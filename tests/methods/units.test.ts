import { describe, expect, it } from "vitest";
import { z } from "zod";
import { METHODS } from "#lib/methods/catalogue.ts";
import { unitOfName } from "#lib/units/unit-of-name.ts";
import { auditUnits } from "#tests/units/unit-audit.ts";
import { NAMES_WITHOUT_UNIT } from "./names-without-unit.ts";

const exempt = Object.keys(NAMES_WITHOUT_UNIT);

describe.each(METHODS.map((card) => [card.id, card] as const))("%s", (_, card) => {
  it("states the unit of each number, and the name agrees", () => {
    const input = auditUnits(card.input, exempt, "input");
    const output = auditUnits(card.output, exempt, "output");
    expect([...input.faults, ...output.faults]).toEqual([]);
    expect(input.numbersSeen).toBeGreaterThan(0);
    expect(output.numbersSeen).toBeGreaterThan(0);
  });
});

describe("the check itself", () => {
  const cfm = z.number().meta({ unit: "cfm" });

  it("finds a number without unit, a name without unit, and a name that promises another", () => {
    const planted = z.strictObject({
      flowCfm: cfm,
      bareCfm: z.number(),
      plain: cfm,
      ductPressurePa: cfm,
      points: z.array(z.strictObject({ deepPa: cfm })),
      one: z.discriminatedUnion("kind", [z.strictObject({ kind: z.literal("a"), insidePa: cfm })]),
      shared: z.strictObject({ sharedPa: cfm }).meta({ id: "PlantedShared" }),
      listedPressuresPa: z.array(cfm),
      orNothingPa: cfm.nullable(),
      rangedPa: z.strictObject({ value: cfm, p10: cfm.optional() }),
      rangedCfm: z.strictObject({ value: cfm, p10: cfm.optional() }),
    });
    expect(auditUnits(planted, []).faults.map((fault) => fault.path)).toEqual([
      ".bareCfm",
      ".plain",
      ".ductPressurePa",
      ".points[].deepPa",
      ".one.insidePa",
      ".shared.sharedPa",
      ".listedPressuresPa[]",
      ".orNothingPa",
      ".rangedPa.value",
      ".rangedPa.p10",
    ]);
    expect(auditUnits(planted, ["plain"]).faults.map((fault) => fault.path)).not.toContain(".plain");
  });

  it("still asks an exempt name for its unit", () => {
    expect(auditUnits(z.strictObject({ use: z.number() }), ["use"]).faults).toHaveLength(1);
  });

  it("reads the longest ending, at a word's start", () => {
    expect(unitOfName("outdoorTemperatureF")).toBe("°F");
    expect(unitOfName("returnTemperatureDifferenceF")).toBe("Δ°F");
    expect(unitOfName("envelopePressuresPa")).toBe("Pa");
    expect(unitOfName("deltaFlowsCfm")).toBe("cfm");
    expect(unitOfName("years")).toBe("yr");
    expect(unitOfName("isOFF")).toBeUndefined();
    expect(unitOfName("seer")).toBeUndefined();
  });
});

describe("the names without unit", () => {
  it("are all in use, so that none outlives its field", () => {
    const used = new Set<string>();
    const collect = (node: unknown): void => {
      if (typeof node !== "object" || node === null) return;
      for (const [key, child] of Object.entries(node)) {
        used.add(key);
        collect(child);
      }
    };
    for (const card of METHODS) {
      collect(z.toJSONSchema(card.input, { io: "input" }));
      collect(z.toJSONSchema(card.output));
    }
    expect(exempt.filter((name) => !used.has(name))).toEqual([]);
  });
});
