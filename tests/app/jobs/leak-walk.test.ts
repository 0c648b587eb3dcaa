import { describe, expect, it } from "vitest";
import type { Draft } from "#app/jobs/trip/draft.ts";
import { leakAt, leakSpots } from "#app/jobs/trip/steps/leak-spots.ts";
import { walkWords } from "#app/jobs/trip/walk-words.ts";
import { leakWalk } from "#lib/estimate/leak-walk.ts";
import { unitText } from "#lib/units/unit-text.ts";
import { exampleDocument, exampleWithReference } from "#tests/estimate/example-jobs.ts";

const draft = exampleDocument("cold-attic-furnace.json") as Draft;

describe("where one stands on the ducts", () => {
  it("is every side in every place with a run, and the air handler first", () => {
    const labels = leakSpots(draft).map(({ label }) => label);
    expect(labels[0]).toMatch(/^Air handler, /);
    expect(labels).toContain("Supply, attic");
    expect(labels.some((label) => label.startsWith("Return, "))).toBe(true);
    expect(new Set(labels).size).toBe(labels.length);
  });

  it("gives the next leak its side, place and what is usual there", () => {
    const spot = leakSpots(draft).find(({ label }) => label === "Supply, attic")!;
    const leak = leakAt(draft, spot);
    expect(leak).toMatchObject({
      side: "supply",
      placeId: spot.placeId,
      systemId: spot.systemId,
      kind: "boot-to-drywall",
    });
    expect((draft.sites as Draft[]).map(({ id }) => id)).not.toContain(leak.id);
    const belly = {
      ...draft,
      places: [{ id: "b", kind: "belly" }],
      systems: [{ id: "s", runs: [{ id: "r", side: "supply", placeId: "b" }] }],
    };
    expect(leakAt(belly, leakSpots(belly)[0]).kind).toBe("belly");
  });

  it("is where one just was while no run is known", () => {
    const bare: Draft = {
      places: [
        { id: "rooms", kind: "conditioned" },
        { id: "a", kind: "attic" },
      ],
      systems: [{ id: "s" }],
    };
    expect(leakSpots(bare)).toEqual([]);
    expect(leakAt(bare, undefined)).toMatchObject({ systemId: "s", placeId: "a", side: "supply" });
  });
});

describe("the walk in words", () => {
  it("says found and hidden in the units of whoever walks, each leak with its doubt", async () => {
    const { job, reference } = await exampleWithReference("cold-attic-furnace.json");
    const walks = leakWalk(job, reference);
    const us = walkWords({ walks, job, text: unitText("us") });
    const si = walkWords({ walks, job, text: unitText("si") });
    expect(us.groups[0]!.state).toMatch(/^2\d\d cfm found, [\d.]+ cfm not yet found\.$/);
    expect(si.groups[0]!.state).toMatch(/^1\d\d L\/s found, [\d.]+ L\/s not yet found\.$/);
    for (const { id } of job.sites) expect(us.leaks[id]!.doubt).toMatch(/^could be [\d.,]+ to [\d.,]+$/);
    expect(us.groups[0]!.measure).toMatch(/^A test of .* would tell most now: /);
    expect(us.groups[0]!.above).toEqual([]);
  });
});
