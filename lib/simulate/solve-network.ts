import { refuse } from "#lib/errors/input-problem.ts";
import type { Cfm, Pascals } from "#lib/units/quantity.ts";
import { type FlowLink, type FlowNetwork, leakFlow, leakSlope, type NetworkSolution } from "./flow-network.ts";
import { solveLinearSystem } from "./linear-system.ts";

const MOST_ITERATIONS = 200;
const MOST_HALVINGS = 25;
/** No node may gain or lose more than this share of the largest flow (of 1 cfm at least): about as well as numbers go. */
const BALANCED_WITHIN_SHARE = 1e-9;
/** Makes a missed target of 1 Pa weigh as much as this flow while the step length is chosen. */
const TARGET_WEIGHT_CFM_PER_PA = 100;

/**
 * Pressures and flows at which every node passes on as much air as it receives and every held channel is on target.
 * Σ q(ΔP) = 0 at each free node, by Newton's method with halved steps. Valid for networks whose nodes all connect to a
 * given pressure. Source: derived (conservation of mass at one density). Left out: stack effect, density, momentum.
 * @throws InputProblem when no balance is found in 200 steps, or a node hangs free.
 */
export function solveNetwork(network: FlowNetwork): NetworkSolution {
  const { fixedPressuresPa: fixed, links } = network;
  const freeNodes = [...new Set(links.flatMap((link) => [link.from, link.to]))].filter((node) => !(node in fixed));
  const holding = links.filter((link) => link.kind === "holding-fan");
  const nodeIndex = new Map(freeNodes.map((node, index) => [node, index]));
  const flowIndex = new Map(holding.map((link, index) => [link.id, freeNodes.length + index]));
  const size = freeNodes.length + holding.length;
  const unknowns = new Float64Array(size);

  const pressureOf = (node: string, at: Float64Array): Pascals => {
    const index = nodeIndex.get(node);
    return index === undefined ? given(fixed, node) : at[index]!;
  };
  const flowOf = (link: FlowLink, at: Float64Array): Cfm => {
    if (link.kind === "holding-fan") return at[flowIndex.get(link.id)!]!;
    const differencePa = pressureOf(link.from, at) - pressureOf(link.to, at);
    if (link.kind === "curve-fan") return link.flowAtZeroCfm + link.slopeCfmPerPa * differencePa;
    return leakFlow(link, differencePa);
  };
  const imbalance = (at: Float64Array): Float64Array => {
    const miss = new Float64Array(size);
    for (const link of links) {
      const flow = flowOf(link, at);
      const [from, to] = [nodeIndex.get(link.from), nodeIndex.get(link.to)];
      if (from !== undefined) miss[from]! -= flow;
      if (to !== undefined) miss[to]! += flow;
      if (link.kind !== "holding-fan") continue;
      const shownPa = pressureOf(link.signal, at) - pressureOf(link.reference, at);
      miss[flowIndex.get(link.id)!] = (shownPa - link.targetPa) * TARGET_WEIGHT_CFM_PER_PA;
    }
    return miss;
  };
  const slopes = (at: Float64Array): Float64Array[] => {
    const rows = Array.from({ length: size }, () => new Float64Array(size));
    const add = (row: number | undefined, column: number | undefined, slope: number) => {
      if (row !== undefined && column !== undefined) rows[row]![column]! += slope;
    };
    for (const link of links) {
      const [from, to] = [nodeIndex.get(link.from), nodeIndex.get(link.to)];
      if (link.kind === "holding-fan") {
        const flow = flowIndex.get(link.id)!;
        add(from, flow, -1);
        add(to, flow, 1);
        add(flow, nodeIndex.get(link.signal), TARGET_WEIGHT_CFM_PER_PA);
        add(flow, nodeIndex.get(link.reference), -TARGET_WEIGHT_CFM_PER_PA);
        continue;
      }
      const slope =
        link.kind === "curve-fan"
          ? link.slopeCfmPerPa
          : leakSlope(link, pressureOf(link.from, at) - pressureOf(link.to, at));
      add(from, from, -slope);
      add(from, to, slope);
      add(to, from, slope);
      add(to, to, -slope);
    }
    return rows;
  };

  const hanging = hangingNode(network, freeNodes);
  if (hanging !== undefined) return noBalance(`“${hanging}” has no way to the air outside`);
  let miss = imbalance(unknowns);
  for (let iteration = 0; iteration <= MOST_ITERATIONS; iteration++) {
    const largestImbalanceCfm = miss.reduce((largest, value) => Math.max(largest, Math.abs(value)), 0);
    const largestFlowCfm = links.reduce((largest, link) => Math.max(largest, Math.abs(flowOf(link, unknowns))), 1);
    if (largestImbalanceCfm <= BALANCED_WITHIN_SHARE * largestFlowCfm) {
      const names = [...Object.keys(fixed), ...freeNodes];
      return {
        pressuresPa: Object.fromEntries(names.map((node) => [node, pressureOf(node, unknowns)])),
        flowsCfm: Object.fromEntries(links.map((link) => [link.id, flowOf(link, unknowns)])),
        iterationCount: iteration,
        largestImbalanceCfm,
      };
    }
    const step = miss.slice();
    if (!solveLinearSystem(slopes(unknowns), step)) return noBalance("a held pressure does not depend on its fan");
    const better = shorten(unknowns, step, miss, imbalance);
    if (better === undefined) return noBalance(`it stops at ${largestImbalanceCfm} cfm`);
    unknowns.set(better.at);
    miss = better.miss;
  }
  return noBalance(`${MOST_ITERATIONS} steps were not enough`);
}

/** A node that no leak and no yielding fan joins, over whatever way, to a given pressure: its own would be anything. */
function hangingNode({ fixedPressuresPa, links }: FlowNetwork, freeNodes: readonly string[]): string | undefined {
  const reached = new Set(Object.keys(fixedPressuresPa));
  const ways = links.filter((link) => link.kind !== "curve-fan" || link.slopeCfmPerPa > 0);
  for (let count = 0; count < reached.size; ) {
    count = reached.size;
    for (const { from, to } of ways) {
      if (reached.has(from)) reached.add(to);
      else if (reached.has(to)) reached.add(from);
    }
  }
  return freeNodes.find((node) => !reached.has(node));
}

/** The longest halving of a Newton step that brings the network closer to balance. */
function shorten(
  from: Float64Array,
  step: Float64Array,
  miss: Float64Array,
  imbalance: (at: Float64Array) => Float64Array,
): { at: Float64Array; miss: Float64Array } | undefined {
  const before = sumOfSquares(miss);
  for (let halving = 0, length = 1; halving <= MOST_HALVINGS; halving++, length /= 2) {
    const at = from.map((value, index) => value - length * step[index]!);
    const missThere = imbalance(at);
    if (sumOfSquares(missThere) < before) return { at, miss: missThere };
  }
  return undefined;
}

const sumOfSquares = (values: Float64Array): number => values.reduce((sum, value) => sum + value * value, 0);

function given(fixed: FlowNetwork["fixedPressuresPa"], node: string): Pascals {
  const pressurePa = fixed[node];
  if (pressurePa === undefined) {
    refuse({
      field: "links",
      detail: `A hose ends at “${node}”, which no link reaches`,
      fix: "Name a node of the network.",
    });
  }
  return pressurePa;
}

function noBalance(detail: string): never {
  return refuse({
    field: "links",
    detail: `The air flows of this network find no balance: ${detail}`,
    fix: "Check that every part is open to somewhere and that each target can be reached.",
    code: "no-balance",
  });
}
