import { describe, expect, it } from "vitest";
import { setupHref } from "#app/setup/setup-href.ts";
import { readSetupQuery } from "#app/setup/setup-query.ts";
import { basisWords } from "#app/setup/setup-words.ts";
import { DEMO_FAN, DEMO_GAUGE } from "#lib/setup/demo-instruments.ts";
import { setupAnswersSchema } from "#lib/setup/setup-answers.ts";
import { setupSheet } from "#lib/setup/setup-sheet.ts";

const instruments = { fans: [DEMO_FAN], gauges: [DEMO_GAUGE] };
const read = (query: Record<string, string | string[]>) => readSetupQuery({ query, instruments, date: "2026-11-25" });

describe("answers from the address of the page", () => {
  it("says nothing: total leakage, pushed in at the central return, and as if something burned indoors", () => {
    const { answers, errors } = read({});
    expect(answers).toMatchObject({
      testKind: "total-leakage",
      direction: "pushing",
      fanConnection: "central-return",
      personAt: "house",
      registerCover: "adhesive-film",
      hasCombustionAppliance: true,
    });
    expect(answers.fan).toBeUndefined();
    expect(errors).toEqual([]);
  });

  it("any address gives answers that the schema takes, and a sheet", () => {
    for (const query of [
      { test: "nonsense", direction: "sideways", at: "moon", registers: "-3", expect: "NaN" },
      { test: "side-leakage", side: "return", fan: "demo-fan", expect: "150", gauge: "demo-gauge" },
      { test: ["total-leakage", "delta-q"], stage: "rough-in-without" },
    ] as Record<string, string | string[]>[]) {
      const { answers } = read(query);
      expect(setupAnswersSchema.parse(answers)).toEqual(answers);
      expect(setupSheet(answers).steps.length).toBeGreaterThan(5);
    }
  });

  it("numbers are read as people type them, and refused with the words of their label", () => {
    const typed = read({ registers: " 14 ", expect: "1,250 cfm" });
    expect(typed.answers.registerCount).toBe(14);
    expect(typed.answers.expectedLeakageCfm).toBe(1250);
    const wrong = read({ registers: "2.5", expect: "0" });
    expect(wrong.errors.map(({ fieldId }) => fieldId)).toEqual(["registers", "expect"]);
    expect(wrong.typed).toEqual({ registers: "2.5", expect: "0" });
    expect(wrong.errors[0]?.text).toMatch(/^Registers and grilles must be/);
  });

  it("a flow is in the units that the address names, and shown in the reader's", () => {
    const inSi = (query: Record<string, string>) =>
      readSetupQuery({ query, instruments, date: "2026-11-25", units: "si" });
    // 1 cfm is 0.4719474 L/s: exact definitions.
    const typedInSi = inSi({ expect: "70.8", units: "si" });
    expect(typedInSi.answers.expectedLeakageCfm! * 0.4719474).toBeCloseTo(70.8, 4);
    expect(typedInSi.typed.expect).toBe("70.8");
    const linkFromUs = inSi({ expect: "150", units: "us" });
    expect(linkFromUs.answers.expectedLeakageCfm).toBe(150);
    expect(Number(linkFromUs.typed.expect)).toBeCloseTo(70.7921, 3);
    expect(inSi({ expect: "9000", units: "si" }).errors[0]?.text).toContain("8,000 cfm (3,776 L/s)");
  });

  it("the fan connects where the test needs it, until somebody says otherwise", () => {
    expect(read({ test: "matched-pressure" }).answers.fanConnection).toBe("air-handler-cabinet");
    expect(read({ test: "side-leakage", side: "supply" }).answers.fanConnection).toBe("supply-plenum");
    expect(read({ test: "side-leakage", side: "return" }).answers.fanConnection).toBe("central-return");
    expect(read({ test: "matched-pressure", connect: "branch-register" }).answers.fanConnection).toBe(
      "branch-register",
    );
  });

  it("a fan that is not known is no fan", () => {
    expect(read({ fan: "demo-fan" }).answers.fan).toBe(DEMO_FAN);
    expect(read({ fan: "somebody-elses" }).answers.fan).toBeUndefined();
  });
});

describe("words", () => {
  it("a rule says what it stands on", () => {
    expect(basisWords({ sourceId: "practice" })).toBe("Practice");
    expect(basisWords({ sourceId: "astm-e1554", locator: "form of" })).toBe("Standard: ASTM E1554, form of");
  });

  it("a link carries only what is known", () => {
    expect(setupHref({ job: "j1", test: "total-leakage", fan: undefined })).toBe("/setup?job=j1&test=total-leakage");
    expect(setupHref({})).toBe("/setup");
  });
});
