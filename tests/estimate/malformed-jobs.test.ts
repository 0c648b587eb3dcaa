import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { resultSchema } from "#lib/job/result/result-schema.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { EXAMPLE_FILES, exampleDocument } from "./example-jobs.ts";

type Path = readonly (string | number)[];

/** Every place in a document, branches and leaves. */
function placesOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== "object" || value === null) return [path];
  return [
    path,
    ...Object.entries(value).flatMap(([key, each]) =>
      placesOf(each, [...path, Array.isArray(value) ? Number(key) : key]),
    ),
  ];
}

const PLACES = EXAMPLE_FILES.map((file) => placesOf(exampleDocument(file)).slice(1));

/** Values that a hand-written file, another program or a broken form may hold. */
const oddValue = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    "",
    "abc",
    "-1",
    -1,
    0,
    1e-9,
    1e9,
    1e308,
    Number.MAX_SAFE_INTEGER,
    true,
    [],
    {},
    [[]],
    "NaN",
  ),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.integer(),
  fc.string({ maxLength: 12 }),
);

const mutation = fc.record({
  place: fc.nat(),
  kind: fc.constantFrom("replace", "remove", "remove", "add", "scale", "scale", "scale", "scale"),
  value: oddValue,
  factor: fc.constantFrom(-1, 0, 0.2, 0.5, 0.8, 1.3, 2, 6),
});

function mutate(
  document: Record<string, unknown>,
  path: Path,
  { kind, value, factor }: { kind: string; value: unknown; factor: number },
): void {
  let holder: unknown = document;
  for (const key of path.slice(0, -1)) {
    if (typeof holder !== "object" || holder === null) return;
    holder = (holder as Record<string | number, unknown>)[key];
  }
  if (typeof holder !== "object" || holder === null) return;
  const record = holder as Record<string | number, unknown>;
  const last = path.at(-1)!;
  const was = record[last];
  if (kind === "remove") {
    if (Array.isArray(holder)) holder.splice(Number(last), 1);
    else delete record[last];
  } else if (kind === "add") record[`${String(last)}Extra`] = value;
  else if (kind === "scale" && typeof was === "number") record[last] = was * factor;
  else record[last] = value;
}

function findNonFinite(value: unknown, path: string): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [path];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => findNonFinite(each, `${path}/${key}`));
}

describe("1,000 malformed jobs", () => {
  it("never crash the engine nor give NaN: a problem with pointer and repair, or a result of the promised form", {
    timeout: 120_000,
  }, async () => {
    let refused = 0;
    let answered = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.nat(EXAMPLE_FILES.length - 1),
        fc.array(mutation, { minLength: 1, maxLength: 3 }),
        async (file, mutations) => {
          const document = exampleDocument(EXAMPLE_FILES[file]!);
          const places = PLACES[file]!;
          for (const each of mutations) mutate(document, places[each.place % places.length]!, each);
          try {
            const job = parseJob(document);
            const result = await estimate(job, await loadReferenceData(job));
            answered++;
            expect(findNonFinite(result, "")).toEqual([]);
            expect(resultSchema.safeParse(result).error?.issues.slice(0, 3) ?? []).toEqual([]);
          } catch (thrown) {
            if (!(thrown instanceof InputProblem)) throw thrown;
            refused++;
            expect(thrown.errors.length).toBeGreaterThan(0);
            for (const { pointer, detail, fix } of thrown.errors) {
              expect(pointer).toMatch(/^#/);
              expect(detail.length).toBeGreaterThan(5);
              expect(fix.length).toBeGreaterThan(5);
            }
          }
        },
      ),
      { numRuns: 1000, seed: 20261125 },
    );
    // Both ways must have been taken, or the mutations prove nothing.
    expect(refused).toBeGreaterThan(200);
    expect(answered).toBeGreaterThan(100);
  });
});
