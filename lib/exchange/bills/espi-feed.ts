import type { XmlNode } from "../hpxml/xml-node.ts";
import { type BilledField, billProblem } from "./billed-use.ts";
import { ALLOWED_UNITS, DELIVERED, ESTIMATED_QUALITIES, INTERVAL_BEHAVIORS, measureOf } from "./espi-codes.ts";
import type { Span } from "./local-days.ts";

export interface Interval extends Span {
  /** In the series' own steps: times `stepUse` it is a bill's unit. */
  count: number;
  isEstimated: boolean;
}

/** What one meter delivered of one fuel. */
export interface IntervalSeries {
  field: BilledField;
  stepUse: number;
  path: string;
  intervals: Interval[];
}

/** A billing period, with what was billed if it is said. */
export interface BillingPeriod extends Span {
  path: string;
  field: BilledField | undefined;
  use: number | undefined;
  isEstimated: boolean;
}

export interface EspiFeed {
  series: IntervalSeries[];
  periods: BillingPeriod[];
  localTime: XmlNode | undefined;
  /** What the file holds besides and was not read, one line each. */
  leftOut: string[];
}

interface Resource {
  node: XmlNode;
  self: string;
  up: string;
  related: string[];
}

/**
 * The parts of an ESPI feed that tell of use: readings tied to their type by the links of their entries. Source:
 * naesb-req21-espi.
 * @throws InputProblem that names the element, what is wrong and what is allowed.
 */
export function readFeed(feed: XmlNode): EspiFeed {
  const all = (...names: string[]): Resource[] =>
    feed.children("entry").flatMap((entry) => {
      const hrefs = (rel: string) =>
        entry
          .children("link")
          .filter((link) => link.attribute("rel") === rel)
          .map((link) => plainHref(link.attribute("href") ?? ""));
      const found = entry.children("content").flatMap((content) => names.flatMap((name) => content.children(name)));
      return found.map((node) => ({
        node,
        self: hrefs("self")[0] ?? "",
        up: hrefs("up")[0] ?? "",
        related: hrefs("related"),
      }));
    });
  const [types, meters] = [all("ReadingType"), all("MeterReading")];
  const leftOut: string[] = [];
  const blocks = new Map<string, { type: Resource; nodes: XmlNode[] }>();
  for (const block of all("IntervalBlock")) {
    const meter = meters.find(({ self, related }) => related.includes(block.up) || isUnder(block, self));
    const ofMeter = types.filter(({ self }) => self !== "" && meter?.related.includes(self));
    const type = types.length === 1 ? types[0] : ofMeter.length === 1 ? ofMeter[0] : undefined;
    if (type === undefined)
      throw billProblem({
        at: block.node.path,
        detail: `its links lead to ${ofMeter.length} of the file's ${types.length} ReadingTypes`,
        fix: "Its MeterReading must be related to one ReadingType; download the file again, one meter at a time.",
      });
    const key = `${type.node.path} ${meter?.self ?? ""}`;
    const known = blocks.get(key) ?? { type, nodes: [] };
    known.nodes.push(block.node);
    blocks.set(key, known);
  }
  const series = [...blocks.values()].flatMap(({ type, nodes }) => {
    const read = seriesOf(type.node, nodes);
    if (typeof read !== "string") return [read];
    leftOut.push(`${type.node.path} was left out: ${read}.`);
    return [];
  });
  const periods = all("UsageSummary", "ElectricPowerUsageSummary").flatMap(({ node }) => {
    const read = periodOf(node);
    if (typeof read !== "string") return [read];
    leftOut.push(`${node.path} was left out: ${read}.`);
    return [];
  });
  return { series, periods, localTime: all("LocalTimeParameters")[0]?.node, leftOut };
}

const plainHref = (href: string): string => href.trim().replace(/\/+$/, "");
const isUnder = (block: Resource, self: string): boolean =>
  self !== "" && [block.up, block.self].some((href) => href.startsWith(`${self}/`));

function seriesOf(type: XmlNode, blocks: readonly XmlNode[]): IntervalSeries | string {
  const [direction, behavior] = [type.text("flowDirection"), type.text("accumulationBehaviour")];
  const measure = measureOf(type.text("commodity"), type.text("uom"));
  if (typeof measure === "string") return `${measure}; read are ${ALLOWED_UNITS}`;
  if (direction !== undefined && direction !== DELIVERED && direction !== "0")
    return `flowDirection ${direction} is not use delivered to the house (1)`;
  if (behavior !== undefined && !INTERVAL_BEHAVIORS.includes(behavior))
    return `accumulationBehaviour ${behavior} is not the use of each interval (4)`;
  const { field, perUnit } = measure;
  const usual = type.text("defaultQuality");
  const intervals = blocks.flatMap((block) =>
    block.children("IntervalReading").map((reading): Interval => {
      const qualities = reading.children("ReadingQuality").map((each) => each.text("quality"));
      const said = qualities.length > 0 ? qualities : [usual];
      return {
        ...spanOf(reading, "timePeriod"),
        count: wholeNumber(reading, "value", 0),
        isEstimated: said.some((quality) => ESTIMATED_QUALITIES.includes(quality ?? "")),
      };
    }),
  );
  return {
    field,
    stepUse: perUnit * 10 ** powerOf(type),
    path: blocks[0]!.path,
    intervals: intervals.sort((a, b) => a.start - b.start),
  };
}

function periodOf(summary: XmlNode): BillingPeriod | string {
  const billed = summary.child("overallConsumptionLastPeriod");
  const span = spanOf(summary, "billingPeriod");
  const isEstimated = ESTIMATED_QUALITIES.includes(summary.text("qualityOfReading") ?? "");
  const { path } = summary;
  if (billed?.text("value") === undefined) return { ...span, path, field: undefined, use: undefined, isEstimated };
  const measure = measureOf(summary.text("commodity"), billed.text("uom"));
  if (typeof measure === "string") return `${measure}; read are ${ALLOWED_UNITS}`;
  const { field, perUnit } = measure;
  const use = Number((wholeNumber(billed, "value", 0) * perUnit * 10 ** powerOf(billed)).toPrecision(12));
  return { ...span, path, field, use, isEstimated };
}

function spanOf(node: XmlNode, name: string): Span {
  const span = node.child(name);
  if (span === undefined)
    throw billProblem({ at: `${node.path}/${name}`, detail: "it is missing", fix: "It must hold start and duration." });
  return { start: wholeNumber(span, "start", 0), durationSeconds: wholeNumber(span, "duration", 1) };
}

const MOST_POWER = 12;

/** Not said is none, by the schema. */
function powerOf(node: XmlNode): number {
  const power =
    node.text("powerOfTenMultiplier") === undefined ? 0 : wholeNumber(node, "powerOfTenMultiplier", -MOST_POWER);
  if (power <= MOST_POWER) return power;
  throw billProblem({
    at: `${node.path}/powerOfTenMultiplier`,
    detail: `${power} is no power of ten of a meter`,
    fix: `It must lie between -${MOST_POWER} and ${MOST_POWER}.`,
  });
}

function wholeNumber(node: XmlNode, name: string, least: number): number {
  const text = node.text(name);
  const value = Number(text);
  if (text !== undefined && /^[+-]?\d+$/.test(text) && Number.isSafeInteger(value) && value >= least) return value;
  throw billProblem({
    at: `${node.path}/${name}`,
    detail: text === undefined ? "it is missing" : `“${text.slice(0, 40)}” cannot be used`,
    fix: `It must be a whole number of ${least} or more.`,
  });
}
