import { solveQP } from "quadprog";
import { type FoundLeak, type LeakageMeasurements, priorSpread } from "#lib/apportion/leakage-reconciliation.ts";
import { MEASUREMENT_NAMES, QUARTERS, seenShare } from "#lib/apportion/measurement-rows.ts";

const fromOne = <T>(values: readonly T[]): T[] => [undefined as T, ...values];

/** The reconciliation written out as a quadratic program and solved by an independent library; null where it fails. */
export function solveAsQuadraticProgram({
  measurements,
  sites,
  cellVarianceShare,
}: {
  measurements: LeakageMeasurements;
  sites: readonly FoundLeak[];
  cellVarianceShare: number;
}): { leaksCfm25: number[]; objectiveOf: (leaksCfm25: readonly number[]) => number } | null {
  const names = MEASUREMENT_NAMES.filter((name) => measurements[name]);
  const largest =
    Math.max(0, ...names.map((name) => measurements[name]!.cfm25)) ||
    sites.reduce((sum, site) => sum + site.priorCfm25, 0);
  const leaks = [
    ...sites.map((site) => ({ ...site, prior: site.priorCfm25, spread: priorSpread(site, largest) })),
    ...QUARTERS.map(({ side, outside }) => ({
      side,
      toOutsideShare: outside ? 1 : 0,
      prior: 0,
      spread: largest * Math.sqrt(cellVarianceShare),
    })),
  ];
  const rows = names.map((name) => ({
    row: leaks.map((leak) => seenShare(name, leak.side, leak.toOutsideShare)),
    measured: measurements[name]!.cfm25,
    doubt: measurements[name]!.standardUncertaintyCfm25,
  }));
  const soft = rows.filter((each) => each.doubt > 0);
  const exact = rows.filter((each) => each.doubt === 0);
  // In units of the largest measurement, for the library's sake.
  const unit = largest || 1;
  const matrix = leaks.map((_, i) =>
    fromOne(
      leaks.map(
        (leak, j) =>
          (i === j ? (unit / leak.spread) ** 2 : 0) +
          soft.reduce((sum, each) => sum + each.row[i]! * each.row[j]! * (unit / each.doubt) ** 2, 0),
      ),
    ),
  );
  const vector = leaks.map(
    (leak, i) =>
      (leak.prior / unit) * (unit / leak.spread) ** 2 +
      soft.reduce((sum, each) => sum + each.row[i]! * (each.measured / unit) * (unit / each.doubt) ** 2, 0),
  );
  const constraints = leaks.map((_, i) =>
    fromOne([...exact.map((each) => each.row[i]!), ...leaks.map((__, j) => (i === j ? 1 : 0))]),
  );
  const bounds = [...exact.map((each) => each.measured / unit), ...leaks.map(() => 0)];
  const { solution, message } = solveQP(
    fromOne(matrix),
    fromOne(vector),
    fromOne(constraints),
    fromOne(bounds),
    exact.length,
  );
  // It calls equalities that leave no room (a sum of leaks that must be 0) inconsistent.
  if (message.includes("inconsistent")) return null;
  if (message) throw new Error(message);
  const answer = solution.slice(1);
  const isFeasible = exact.every(
    ({ row, measured }) => Math.abs(row.reduce((sum, seen, i) => sum + seen * answer[i]!, 0) - measured / unit) < 1e-9,
  );
  if (!isFeasible || answer.some((value) => value < -1e-9)) return null;
  const objectiveOf = (leaksCfm25: readonly number[]) =>
    leaks.reduce((sum, leak, i) => sum + ((leaksCfm25[i]! - leak.prior) / leak.spread) ** 2, 0) +
    soft.reduce(
      (sum, each) =>
        sum +
        ((each.row.reduce((seen, share, i) => seen + share * leaksCfm25[i]!, 0) - each.measured) / each.doubt) ** 2,
      0,
    );
  return { leaksCfm25: answer.map((value) => value * unit), objectiveOf };
}
