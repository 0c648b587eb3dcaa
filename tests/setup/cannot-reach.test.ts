import { expect, it } from "vitest";
import { FIRST_REACH_QUESTION, REACH_TREE, type ReachNodeId } from "#lib/setup/cannot-reach.ts";

it("every way through the tree ends, visits all of it, and only the last 'no' extrapolates", () => {
  const seen = new Set<ReachNodeId>();
  const ends: string[] = [];
  const walk = (id: ReachNodeId, way: readonly ReachNodeId[]): void => {
    expect(way).not.toContain(id);
    seen.add(id);
    const node = REACH_TREE[id];
    if (node.kind !== "question") {
      ends.push(node.kind);
      return;
    }
    walk(node.yes, [...way, id]);
    walk(node.no, [...way, id]);
  };
  walk(FIRST_REACH_QUESTION, []);
  expect(seen.size).toBe(Object.keys(REACH_TREE).length);
  expect(ends.filter((kind) => kind === "extrapolate")).toHaveLength(1);
  expect(ends.at(-1)).toBe("extrapolate");
});

it("asks in the order of the trade: cover, torn run, restrictor, fan", () => {
  const order: ReachNodeId[] = [];
  for (let id: ReachNodeId = FIRST_REACH_QUESTION; ; ) {
    const node = REACH_TREE[id];
    if (node.kind !== "question") break;
    order.push(id);
    id = node.no;
  }
  expect(order).toEqual(["film-off", "way-open", "torn-run", "restrictor-too-small", "fan-too-small"]);
});
