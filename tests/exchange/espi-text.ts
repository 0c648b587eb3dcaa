/** Made feeds after the published ESPI schema (NAESB REQ.21): its element names and the links that tie its entries. */
export interface MadeReading {
  start: number;
  durationSeconds: number;
  value: number;
  quality?: number;
}

const NORTH_AMERICA =
  "<dstEndRule>B40E2000</dstEndRule><dstOffset>3600</dstOffset><dstStartRule>360E2000</dstStartRule>";

const entry = (links: Record<string, string[]>, content: string) =>
  `<entry><id>urn:uuid:00000000-0000-4000-8000-000000000000</id>${Object.entries(links)
    .flatMap(([rel, hrefs]) => hrefs.map((href) => `<link rel="${rel}" href="${href}"/>`))
    .join("")}<title>Made for a test</title><content>${content}</content></entry>`;

export const feedOf = (entries: readonly string[]) =>
  `<?xml version="1.0" encoding="UTF-8"?>\n<feed xmlns="http://www.w3.org/2005/Atom">${entries.join("\n")}</feed>`;

export const localTime = (tzOffset = -21_600) =>
  entry(
    { self: ["LocalTimeParameters/01"] },
    `<LocalTimeParameters xmlns="http://naesb.org/espi">${NORTH_AMERICA}<tzOffset>${tzOffset}</tzOffset></LocalTimeParameters>`,
  );

/** A meter: ReadingType, MeterReading and one IntervalBlock. Commodity 1 is electricity, uom 72 is Wh. */
export function meter(
  readings: readonly MadeReading[],
  { id = "01", commodity = 1, uom = 72, power = 0, direction = 1, behavior = 4 } = {},
): string[] {
  const self = `UsagePoint/01/MeterReading/${id}`;
  return [
    entry(
      { self: [self], related: [`${self}/IntervalBlock`, `ReadingType/${id}`] },
      '<MeterReading xmlns="http://naesb.org/espi"/>',
    ),
    entry(
      { self: [`ReadingType/${id}`] },
      `<ReadingType xmlns="http://naesb.org/espi"><accumulationBehaviour>${behavior}</accumulationBehaviour><commodity>${commodity}</commodity><flowDirection>${direction}</flowDirection><powerOfTenMultiplier>${power}</powerOfTenMultiplier><uom>${uom}</uom></ReadingType>`,
    ),
    entry(
      { self: [`${self}/IntervalBlock/1`], up: [`${self}/IntervalBlock`] },
      `<IntervalBlock xmlns="http://naesb.org/espi">${readings
        .map(
          ({ start, durationSeconds, value, quality }) =>
            `<IntervalReading>${quality === undefined ? "" : `<ReadingQuality><quality>${quality}</quality></ReadingQuality>`}<timePeriod><duration>${durationSeconds}</duration><start>${start}</start></timePeriod><value>${value}</value></IntervalReading>`,
        )
        .join("")}</IntervalBlock>`,
    ),
  ];
}

export const summary = (
  start: string,
  end: string,
  billed?: { value: number; uom?: number; power?: number; quality?: number },
) => {
  const [from, to] = [start, end].map((time) => Date.parse(time) / 1000) as [number, number];
  const consumption = billed
    ? `<overallConsumptionLastPeriod><powerOfTenMultiplier>${billed.power ?? 0}</powerOfTenMultiplier><uom>${billed.uom ?? 72}</uom><value>${billed.value}</value></overallConsumptionLastPeriod><qualityOfReading>${billed.quality ?? 14}</qualityOfReading>`
    : "";
  return entry(
    { self: ["UsagePoint/01/UsageSummary/01"] },
    `<UsageSummary xmlns="http://naesb.org/espi"><billingPeriod><duration>${to - from}</duration><start>${from}</start></billingPeriod>${consumption}</UsageSummary>`,
  );
};

/** Readings one after the other from a time with its offset. */
export const readingsFrom = (start: string, durationSeconds: number, values: readonly number[]): MadeReading[] =>
  values.map((value, index) => ({ start: Date.parse(start) / 1000 + index * durationSeconds, durationSeconds, value }));
