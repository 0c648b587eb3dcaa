import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { readJobRows } from "#lib/exchange/csv/read-job-rows.ts";
import { ROW_COLUMNS } from "#lib/exchange/csv/row-columns.ts";
import { sampleRows } from "#lib/exchange/csv/sample-rows.ts";

const problemsOf = (text: string): string[] => {
  try {
    readJobRows(text);
  } catch (error) {
    if (error instanceof InputProblem) return error.errors.map(({ detail, fix }) => `${detail}. ${fix}`);
    throw error;
  }
  return [];
};
const rows = (...lines: string[]): string => lines.join("\n");
const HEAD =
  "row,label,zip,test,kind,stage,direction,ductPressurePa,flowCfm,side,place,band,gapLengthIn,gapWidthIn,note";

describe("rows of a spreadsheet", () => {
  it("the sample is a whole start of a job: its readings are one test, its leaks stand in their places", () => {
    const { house, systems, placeKinds, tests, sites } = readJobRows(sampleRows());
    expect(house).toEqual({ label: "12 Sample Street (invented)", zip: "53711", conditionedFloorAreaFt2: 1640 });
    expect(systems).toEqual([{ id: "system-1", label: "Main system" }]);
    expect(tests).toEqual([
      {
        id: "test-1",
        kind: "total-leakage",
        stage: "existing",
        direction: "pushing",
        date: "2026-11-12",
        points: [
          { ductPressurePa: 15.1, flowCfm: 214 },
          { ductPressurePa: 25.2, flowCfm: 290 },
          { ductPressurePa: 40.3, flowCfm: 386 },
        ],
      },
    ]);
    expect(sites.map(({ kind, placeId, size }) => [kind, placeId, size])).toEqual([
      ["plenum-joint", "attic", { from: "gap", gapLengthIn: 30, gapWidthIn: 0.25 }],
      ["boot-to-drywall", "attic", { from: "band", band: "pencil-wide" }],
      ["filter-slot", "conditioned", { from: "estimate", estimateCfm25: 20 }],
    ]);
    expect(placeKinds).toEqual(["attic", "conditioned"]);
  });

  // RFC 4180, section 2: CRLF or no line end at all after the last row; quotes around commas; a quote within is doubled.
  it("is read as RFC 4180 says, with semicolons and tabs as spreadsheets of other countries write them", () => {
    const text =
      'row,label,kind,side,place,note\r\nhouse,"Elm, 4",,,,\r\nleak,"The ""big"" one",seam,supply,attic,"a\r\nb"';
    const read = readJobRows(text);
    expect(read.house.label).toBe("Elm, 4");
    expect(read.sites[0]).toMatchObject({ label: 'The "big" one', note: "a\r\nb" });
    const plain = "row,label,kind,side,place\nhouse,Elm\nleak,,seam,supply,attic\n";
    const expected = readJobRows(plain);
    expect(readJobRows(`\uFEFF${plain}`)).toEqual(expected);
    expect(readJobRows(plain.replaceAll(",", ";"))).toEqual(expected);
    expect(readJobRows(plain.replaceAll(",", "\t"))).toEqual(expected);
  });

  it("names of columns and choices may be written as people write them; empty rows and columns are nothing", () => {
    const text = rows(
      "Row,,Label,Kind,Side,Place,Test,Stage,Direction,Duct pressure Pa,flow_cfm",
      "House,,Elm",
      ",,,,,,,,,,",
      'Reading,,,Total leakage,,,a,Rough in,Pulling,−25.1,"1,250"',
      "Leak,,,Filter slot,Return,Vented crawlspace",
    );
    const { tests, sites } = readJobRows(text);
    expect(tests[0]).toMatchObject({ stage: "rough-in", points: [{ ductPressurePa: -25.1, flowCfm: 1250 }] });
    expect(sites[0]).toMatchObject({ kind: "filter-slot", placeId: "vented-crawlspace" });
  });

  it("systems are told apart by their names", () => {
    const { systems, sites, tests } = readJobRows(
      rows(
        "row,label,kind,side,place,system,test,stage,direction,ductPressurePa,flowCfm",
        "house,Elm",
        "leak,,seam,supply,attic,Upstairs",
        "leak,,seam,supply,attic,upstairs",
        "leak,,seam,supply,attic,",
        "reading,,total-leakage,,,Upstairs,a,existing,pushing,25,100",
        "reading,,total-leakage,,,,b,existing,pushing,25,100",
      ),
    );
    expect(systems.map(({ label }) => label)).toEqual(["Upstairs", "Main system"]);
    expect(sites.map(({ systemId }) => systemId)).toEqual(["system-1", "system-1", "system-2"]);
    // A reading without a system measured the whole house.
    expect(tests.map(({ systemId }) => systemId)).toEqual(["system-1", undefined]);
  });
});

test.each([
  ["an empty file", "", /^Line 1: The file is empty/],
  ["no rows", HEAD, /^Line 2: There is no row/],
  ["a column that does not exist", "row,kinds\nleak,x", /^Line 1, column kinds: .*Name it kind/],
  ["a column twice", "row,label,Label\nhouse,a,b", /^Line 1, column Label: the column stands twice/],
  ["no column of kinds", "label\nElm", /^Line 1, column row: the column is missing.*house, reading, leak/],
  ["a quote left open", 'row,label\nhouse,"Elm', /quotes do not match/],
  ["letters of another code page", "row,label\nhouse,Caf\uFFFD", /CSV UTF-8/],
  ["a row of no kind", rows(HEAD, "house,Elm", "roof,Elm"), /^Line 3, column row: “roof” .*Use house, reading, leak/],
  ["no house", rows(HEAD, "leak,,,,seam,,,,,supply,attic"), /no row tells the house/],
  ["two houses", rows(HEAD, "house,Elm", "house,Oak"), /^Line 3, column row: a second house; the first is on line 2/],
  ["a ZIP code without its zero", rows(HEAD, "house,Elm,1234"), /^Line 2, column zip: .*five digits/],
  [
    "words where a number belongs",
    rows(HEAD, "house,Elm", "reading,,,a,total-leakage,existing,pushing,25 Pa,290"),
    /^Line 3, column ductPressurePa: “25 Pa” is no number.*no unit/,
  ],
  [
    "a flow beyond what a fan moves",
    rows(HEAD, "house,Elm", "reading,,,a,total-leakage,existing,pushing,25,90000"),
    /^Line 3, column flowCfm: .*at most 8,000 cfm, not 90000/,
  ],
  [
    "no direction",
    rows(HEAD, "house,Elm", "reading,,,a,total-leakage,existing,,25,290"),
    /^Line 3, column direction: .*"pushing", "pulling"/,
  ],
  [
    "a test of a kind that rows cannot tell",
    rows(HEAD, "house,Elm", "reading,,,a,delta-q,existing,pushing,25,290"),
    /^Line 3, column kind: .*enter other tests on the trip/,
  ],
  [
    "steps of one test that disagree",
    rows(HEAD, "house,Elm", "reading,,,a,total-leakage,existing,pushing,25,290", "reading,,,a,,,pulling,30,320"),
    /^Line 4, column direction: “pulling” where line 3 of the same test says “pushing”/,
  ],
  [
    "no pressure in the duct",
    rows(HEAD, "house,Elm", "reading,,,a,total-leakage,existing,pushing,0,290"),
    /^Line 3, column ductPressurePa: a duct pressure of 0 Pa/,
  ],
  [
    "a place nobody knows",
    rows(HEAD, "house,Elm", "leak,,,,seam,,,,,supply,atic"),
    /^Line 3, column place: “atic” .*attic, vented-crawlspace/,
  ],
  [
    "a kind of leak nobody knows",
    rows(HEAD, "house,Elm", "leak,,,,hole,,,,,supply,attic"),
    /^Line 3, column kind: .*"disconnected-run"/,
  ],
  [
    "a size told twice",
    rows(HEAD, "house,Elm", "leak,,,,seam,,,,,supply,attic,hairline,30,0.2"),
    /^Line 3, column gapLengthIn: the size is told in two ways, band and gapLengthIn/,
  ],
  [
    "a gap without its width",
    rows(HEAD, "house,Elm", "leak,,,,seam,,,,,supply,attic,,30"),
    /^Line 3, column gapWidthIn: .*length and its width/,
  ],
  [
    "a cell in a row it does not belong to",
    rows(HEAD, "house,Elm,,,,,,,290"),
    /^Line 2, column flowCfm: a house row has nothing in this column, not “290”/,
  ],
  ["a cell beyond the columns", rows("row,label", "house,Elm,4"), /^Line 2: a cell stands under no column name/],
])("%s is told with its line and what is allowed", (_what, text, words) => {
  expect(problemsOf(text)[0]).toMatch(words);
});

it("tells all that is wrong at once, in the order of the lines, each place once", () => {
  const text = rows(
    HEAD,
    "house,Elm,99",
    "reading,,,a,total-leakage,existing,pushing,abc,290",
    "leak,,,,seam,,,,,supply,nowhere",
  );
  expect(problemsOf(text).map((each) => each.split(":")[0])).toEqual([
    "Line 2, column zip",
    "Line 3, column ductPressurePa",
    "Line 4, column place",
  ]);
});

it("whatever stands in the cells, it is read or refused with its line, never anything else", () => {
  const cell = fc.oneof(
    fc.constantFrom("", "house", "reading", "leak", "seam", "attic", "supply", "25", "-3.2", "total-leakage", "a", '"'),
    fc.string({ maxLength: 6 }),
  );
  const names = ROW_COLUMNS.map(({ name }) => name);
  fc.assert(
    fc.property(fc.array(fc.array(cell, { maxLength: names.length + 1 }), { maxLength: 6 }), (body) => {
      const text = [names, ...body].map((cells) => cells.join(",")).join("\n");
      for (const problem of problemsOf(text)) expect(problem).toMatch(/^Line \d+/);
    }),
    { numRuns: 300 },
  );
});
