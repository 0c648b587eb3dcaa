import type { ScopeLeak, ScopeProblem } from "#lib/scope/scope-problem.ts";

/** A small seeded generator (mulberry32), so that a failing case can be named by its seed. */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** An invented job: leaks over three places, some hard to price apart, with shared costs, trips and a least charge. */
export function randomProblem({
  seed,
  leaksCount,
  repairsCount,
  hasSpray = false,
}: {
  seed: number;
  leaksCount: number;
  repairsCount: number;
  hasSpray?: boolean;
}): ScopeProblem {
  const random = seededRandom(seed);
  const between = (low: number, high: number) => low + (high - low) * random();
  const places = ["attic", "crawl", "garage"];
  const leaks = Array.from({ length: leaksCount }, (_, index): ScopeLeak => {
    const cfm25 = between(3, 60);
    return {
      id: `leak-${String(index).padStart(2, "0")}`,
      systemId: index % 3 === 2 ? "north" : "south",
      placeId: places[Math.floor(random() * 3)]!,
      cfm25,
      standardUncertaintyCfm25: cfm25 * between(0.1, 0.4),
      toOutsideShare: between(0.4, 1),
      operatingCfm: cfm25 * between(0.3, 2),
      lifetimeValueUsd: cfm25 * between(0, 12),
      repairs: Array.from({ length: repairsCount }, (__, which) => {
        const costUsdCents = Math.round(between(1500, 22000));
        return {
          id: `repair-${which}`,
          costUsdCents,
          beforeTaxUsdCents: Math.round(costUsdCents * 0.95),
          labourHours: between(0.2, 2),
          remainingShare: between(0.02, 0.5),
          remainingSpreadShare: between(0.01, 0.15),
        };
      }),
    };
  });
  const unfound = between(10, 60);
  return {
    measure: random() < 0.5 ? "total" : "to-outside",
    beforeCfm25: 0,
    beforeStandardUncertaintyCfm25: between(3, 12),
    leaks,
    systemRepairs: hasSpray
      ? [
          {
            id: "spray-south",
            systemId: "south",
            costUsdCents: Math.round(between(30000, 90000)),
            beforeTaxUsdCents: 30000,
            labourHours: 5,
            remainingShare: 0.25,
            remainingSpreadShare: 0.08,
            needsRepairedLeakIds: leaks
              .filter((leak) => leak.systemId === "south" && leak.cfm25 > 50)
              .map(({ id }) => id),
            reachesLeakIds: leaks.filter((leak) => leak.systemId === "south" && leak.cfm25 < 35).map(({ id }) => id),
          },
        ]
      : [],
    notYetFound: [
      { systemId: "south", cfm25: unfound, toOutsideCfm25: unfound * 0.8, lifetimeValueUsd: 90 },
      { systemId: "north", cfm25: unfound / 2, toOutsideCfm25: unfound / 3, lifetimeValueUsd: 20 },
    ],
    sharedCosts: [
      ...places.map((placeId) => ({
        id: `open-${placeId}`,
        title: placeId,
        costUsdCents: Math.round(between(2000, 15000)),
        beforeTaxUsdCents: 2000,
        labourHours: 0.5,
        neededFor: { kind: "place" as const, placeId },
      })),
      {
        id: "test-out",
        title: "Test",
        costUsdCents: 12500,
        beforeTaxUsdCents: 12500,
        labourHours: 0,
        neededFor: { kind: "any-work" as const },
      },
      {
        id: "permit",
        title: "Permit",
        costUsdCents: 8000,
        beforeTaxUsdCents: 0,
        labourHours: 0,
        neededFor: { kind: "repairs" as const, repairIds: ["repair-1"] },
      },
    ],
    visits: { labourHoursEach: 8, costUsdCents: 9000, beforeTaxUsdCents: 8500 },
    minimumCharge: { minimumUsdCents: 40000, topUpTaxRates: [0.05] },
    exclusions:
      leaksCount > 3
        ? [
            [
              { leakId: "leak-00", repairId: "repair-0" },
              { leakId: "leak-01", repairId: "repair-0" },
            ],
          ]
        : [],
    prerequisites:
      leaksCount > 3
        ? [{ repair: { leakId: "leak-02", repairId: "repair-0" }, needs: { leakId: "leak-03", repairId: "repair-0" } }]
        : [],
  };
}

/** The same job with its leakage now set to what its leaks and its unfound leakage add up to. */
export function withBefore(problem: ScopeProblem): ScopeProblem {
  const share = (leak: ScopeLeak) => (problem.measure === "total" ? 1 : leak.toOutsideShare);
  const found = problem.leaks.reduce((sum, leak) => sum + leak.cfm25 * share(leak), 0);
  const hidden = problem.notYetFound.reduce(
    (sum, cell) => sum + (problem.measure === "total" ? cell.cfm25 : cell.toOutsideCfm25),
    0,
  );
  return { ...problem, beforeCfm25: found + hidden };
}
