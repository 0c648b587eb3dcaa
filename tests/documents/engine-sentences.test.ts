import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { sayOfEngine } from "#lib/documents/messages/engine-words.ts";
import { sayWarning, sayWarningSentence, WARNING_CODES } from "#lib/documents/messages/warning-words.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { judgeTestsTogether } from "#lib/measure/judge-tests-together.ts";
import { warnOfReference } from "#lib/reference-data/reference-warnings.ts";
import { explainOutOfReach } from "#lib/scope/out-of-reach.ts";
import { exampleWithReference } from "#tests/estimate/example-jobs.ts";
import { sentencesOfSource } from "./sentences-of-source.ts";
import { ENGLISH } from "./view-text.ts";

/** Where warnings, assumptions and reasons of a result are written. */
const FOLDERS = ["measure", "loads", "estimate", "estimate/complete", "estimate/assemble", "reference-data"] as const;
const SINGLE_FILES = ["scope/out-of-reach.ts"] as const;
/** Notes of a single calculation, seen beside a method and in no result; or told on a screen or certificate only. */
const ELSEWHERE: Readonly<Record<string, string>> = {
  "measure/delta-q-fit.ts": "the method's own page",
  "measure/flow-from-calibration.ts": "the words of an error",
  "measure/leakage-at-pressure.ts": "reason of a constant, shown with the method",
  "measure/power-law-fit.ts": "the words of an error",
  "loads/saving-from-bills.ts": "the result's screen",
  "estimate/engine-history.ts": "the claim's page",
  "estimate/parameter-space.ts": "said by the driver's id: next.…",
  "estimate/assemble/charges.ts": "the result's screen",
  "estimate/assemble/deemed.ts": "the result's screen, but for its warning",
  "estimate/assemble/house-pressure.ts": "the result's screen",
  "estimate/assemble/later-bills.ts": "the result's screen",
  "estimate/assemble/retest.ts": "said by the retest sheet in its own words",
  "estimate/assemble/verified.ts": "said by the certificate in its own words",
  "reference-data/credits.ts": "the credits of the data, as their publishers ask",
  "reference-data/energy-figures.ts": "partly parts of sentences; held by the assumptions of bare jobs",
};
/** Made of parts that are chosen at run time: whole ones are in the tests of whole warnings or of bare jobs. */
const JOINED: readonly string[] = [
  "The retest 7 was made 7 than 7.",
  "7 show the same pressure and flow to the last digit.",
  "Steps 7 is kept but marked doubtful.",
  "Step 7 are kept but marked doubtful.",
  "From floor area and the usual construction of 7; air tightness 7.",
  "7 It turns unequal duct leaks into the pressure of the house.",
  "By 7 the house would use 7 7 of 7 a year for 7, by 7 7 7.",
];
const LIB = new URL("../../lib/", import.meta.url);
const read = (file: string) => readFileSync(new URL(file, LIB), "utf8");
const FILES = [
  ...FOLDERS.flatMap((folder) =>
    readdirSync(new URL(`${folder}/`, LIB))
      .filter((name) => name.endsWith(".ts"))
      .map((name) => `${folder}/${name}`),
  ),
  ...SINGLE_FILES,
];
const isSaid = (text: string): boolean =>
  sayOfEngine("es", text) !== undefined ||
  WARNING_CODES.some((code) => sayWarningSentence("es", code, text) !== undefined);

describe("every sentence that the engine can give has a Spanish one", () => {
  test("the reader of sources finds plain, chosen and joined texts, and no error's", () => {
    const source =
      "what: `The $" +
      '{isLow ? "low" : "high"} end of $' +
      '{name} is off.`, why: a ? "First is so." : "Second is so.", fix: "Do the other thing." // "A remark is none."';
    expect(sentencesOfSource(source)).toEqual([
      "The low end of 7 is off.",
      "The high end of 7 is off.",
      "First is so.",
      "Second is so.",
    ]);
  });

  test("those written in the sources of a result", () => {
    const sentences = FILES.filter((file) => !(file in ELSEWHERE)).flatMap((file) => sentencesOfSource(read(file)));
    expect(sentences.length).toBeGreaterThan(180);
    expect(sentences.filter((text) => !isSaid(text) && !JOINED.includes(text))).toEqual([]);
    expect(isSaid("The moon pulls at the ducts.")).toBe(false);
  });

  test("each code that warns in a result is one of the catalogue", () => {
    const codes = FILES.flatMap((file) => {
      const source = read(file);
      return /severity:/.test(source) ? [...source.matchAll(/code: "([a-z0-9-]+)"/g)].map(([, code]) => code!) : [];
    });
    expect(codes.length).toBeGreaterThan(40);
    expect([...new Set(codes)].filter((code) => !WARNING_CODES.includes(code)).sort()).toEqual([]);
  });

  test("the file of what is said elsewhere names files that are there and say something", () => {
    for (const file of Object.keys(ELSEWHERE)) expect(sentencesOfSource(read(file)), file).not.toEqual([]);
  });
});

describe("whole warnings, as they come", () => {
  const test1 = { systemId: null, measure: "total", standardUncertaintyCfm25: 5 } as const;
  const setUp = {
    kind: "total-leakage",
    direction: "pushing",
    fanId: "a",
    gaugeId: "a",
    restrictorIds: ["a"],
  } as const;

  test.each([
    [{ kind: "blower-door-subtraction" }, "otro método"],
    [{ fanId: "b" }, "otro ventilador"],
    [{ direction: "pulling" }, "en el sentido contrario"],
    [{ restrictorIds: ["b"] }, "otra placa"],
    [{ gaugeId: "b" }, "otro medidor"],
  ] as const)("a retest made in another way: %j", (other, words) => {
    const notes = judgeTestsTogether([
      { ...test1, testId: "one", stage: "existing", cfm25: 300, steps: [{ pressurePa: 25, flowCfm: 300 }], setUp },
      {
        ...test1,
        testId: "two",
        stage: "retest",
        cfm25: 100,
        steps: [{ pressurePa: 25, flowCfm: 100 }],
        setUp: { ...setUp, ...other },
      },
    ]);
    expect(notes).toHaveLength(1);
    const said = sayWarning("es", notes[0]!)!;
    expect(said).toContain(`La segunda prueba two se hizo`);
    expect(said).toContain(words);
  });

  test("the weather of a far, high and doubtful station, without a ZIP code", () => {
    const station = {
      ...({} as Parameters<typeof warnOfReference>[0]["station"]),
      title: "Town Airport",
      doubt: "3 hours of its typical year are hotter than can be, going by the stations around it.",
      distanceMiles: 90,
      elevationFt: 8000,
    };
    const place = { zip: null, elevation: { value: 100 } } as Parameters<typeof warnOfReference>[0]["place"];
    const warnings = warnOfReference({ place, station, normals: null, isOwnWeather: false });
    expect(warnings).toHaveLength(5);
    const said = warnings.map((warning) => sayWarning("es", warning));
    expect(said).not.toContain(undefined);
    expect(said.join(" ")).toContain("3 horas de su año típico");
    expect(said.join(" ")).toContain("7,900 pies más alta");
  });

  test.each([
    ["bills, plan and equipment", faultyBills, 12],
    ["readings and tests", faultyReadings, 9],
  ] as const)("a job with many faults at once: %s", async (_, spoil, codeCount) => {
    const { job, reference } = await exampleWithReference("cold-attic-furnace.json");
    const { warnings } = await estimate(spoil(job), reference);
    expect(new Set(warnings.map(({ code }) => code)).size).toBeGreaterThanOrEqual(codeCount);
    expect(warnings.filter((warning) => sayWarning("es", warning) === undefined)).toEqual([]);
    const own = [job.house.label, ...job.systems.map(({ label }) => label)];
    const said = warnings.map((warning) =>
      own.reduce<string>((rest, words) => rest.replaceAll(words ?? "", "…"), sayWarning("es", warning)!),
    );
    expect(said.filter((text) => ENGLISH.test(text))).toEqual([]);
  });

  test("why a target cannot be promised", () => {
    const why = explainOutOfReach(
      {
        reachableCfm25: 120,
        closest: null as never,
        notYetFoundCfm25: 30,
        withoutRepairCfm25: 20,
        leftByRepairsCfm25: 10,
        doubtCfm25: 8,
        isHeldBackByLimits: true,
      },
      80,
    );
    expect(why).toHaveLength(6);
    const said = why.map((text) => sayOfEngine("es", text));
    expect(said).not.toContain(undefined);
    expect(said[0]).toBe("La meta de 80 cfm a 25 Pa no se puede prometer; 120 cfm a 25 Pa, sí.");
  });
});

/** The same house with bills that contradict each other, a plan that does not fit and shares that do not add up. */
function faultyBills(job: Job): Job {
  const bill = (startDate: string, endDate: string, electricityKWh: number, more: object = {}) => ({
    startDate,
    endDate,
    electricityKWh,
    ...more,
  });
  return {
    ...job,
    energy: {
      ...job.energy,
      prefer: "known-use",
      bills: [
        bill("2025-01-01", "2025-01-31", 900),
        bill("2025-01-20", "2025-02-27", 300),
        bill("2025-03-01", "2025-05-31", 320),
        bill("2025-06-10", "2025-07-01", 1500, { isEstimated: true }),
        bill("2025-07-02", "2025-07-31", 50),
        bill("2025-09-01", "2025-09-30", 50),
        bill("2025-10-01", "2025-10-30", 50),
        bill("2025-11-01", "2025-11-30", 55),
      ],
    },
    systems: job.systems.map((system) => ({
      ...system,
      servedFloorShare: 0.6,
      blower: { ...system.blower, nameplateStaticPa: 20, fanFlowCfm: 300 },
    })),
    plan: {
      ...job.plan,
      deemedRuleId: "no-such-rule",
      chosenMeasures: [{ siteId: job.sites[0]!.id, repairId: "odd-fix" }],
    },
  } as Job;
}

/** The same house with readings that no careful tester would keep. */
function faultyReadings(job: Job): Job {
  const [total, outside] = job.tests;
  const point = { ductPressurePa: -12, flowCfm: 150, isDoubtful: true };
  return {
    ...job,
    house: { ...job.house, elevationFt: 6000 },
    tests: [
      { ...total, baselineBeforePa: 6, baselineAfterPa: 6, points: [point, point] },
      {
        ...total,
        id: "scattered",
        points: [
          { ductPressurePa: 50, flowCfm: 900 },
          { ductPressurePa: 30, flowCfm: 200 },
          { ductPressurePa: 25, flowCfm: 260 },
        ],
      },
      { ...outside, ductToHousePressurePa: 3, points: [{ ductPressurePa: 25, flowCfm: 2900 }] },
    ],
  } as Job;
}
