import type { Job } from "#lib/job/job-schema.ts";
import type { LeakSite } from "#lib/job/leak-site.ts";
import type { PriceBook } from "#lib/job/price-book-schema.ts";
import type { SiteResult } from "#lib/job/result/leakage-result.ts";
import type { ScopeOption } from "#lib/job/result/plan-result.ts";
import type { Ranged } from "#lib/job/result/ranged.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import type { Language } from "#lib/pictures/scene.ts";
import { DEMO_PRICE_BOOK } from "#lib/scope/demo-price-book.ts";
import { labourHoursOfVisit } from "#lib/scope/price-lines.ts";
import { visitsFor } from "#lib/scope/visits.ts";
import type { Contractor } from "../contractor.ts";
import type { MessageKey } from "../messages/en.ts";
import { leakKindName, placeName } from "../messages/names.ts";
import { createSpeaker, type Speaker } from "../speaker.ts";

export interface ProposalInput {
  job: Job;
  result: Result;
  language: Language;
  /** The day the paper is written, YYYY-MM-DD. */
  isoDate: string;
  contractor?: Contractor;
  /** Until when the prices hold, YYYY-MM-DD. */
  expiresOn?: string;
  /** Fingerprint of the paper that this one takes the place of. */
  replaces?: string;
  /** The accepted paper that this one would change. */
  changes?: AcceptedOrder;
}

/** What a homeowner ordered with a paper, in the words of that paper. */
export interface AcceptedOrder {
  fingerprint: string;
  /** YYYY-MM-DD. */
  acceptedOn: string;
  ordered: Readonly<Record<Language, { option: string; price: string }>>;
}

/** A leak with the number that it carries in every drawing, table and sentence. */
export interface NumberedLeak {
  number: number;
  site: LeakSite;
  result: SiteResult;
  label: string;
  placeLabel: string;
}

/** What every section of a document about one job needs. */
export interface JobContext extends ProposalInput {
  speaker: Speaker;
  book: PriceBook;
  leaks: readonly NumberedLeak[];
  /** The option that is advised; null when none is worth doing. */
  chosen: ScopeOption | null;
  placeLabelOf(placeId: string): string;
  optionTitle(option: ScopeOption): string;
  measureName: string;
  /** Hours that the whole crew is at the house, rounded up, and the visits that takes. */
  hoursAtHouse(option: ScopeOption): { hours: number; visits: number };
}

export function createJobContext(input: ProposalInput): JobContext {
  const { job, result, language } = input;
  const speaker = createSpeaker(language);
  const book = job.priceBook ?? DEMO_PRICE_BOOK;
  const placeLabelOf = (placeId: string) => {
    const place = job.places.find(({ id }) => id === placeId);
    return place ? (place.label ?? placeName(language, place.kind)) : placeId;
  };
  return {
    ...input,
    speaker,
    book,
    leaks: job.sites.flatMap((site, index) => {
      const found = result.sites.find(({ id }) => id === site.id);
      if (!found) return [];
      const label = site.label ?? leakKindName(language, site.kind);
      return [{ number: index + 1, site, result: found, label, placeLabel: placeLabelOf(site.placeId) }];
    }),
    chosen: result.scope.options.find(({ id }) => id === result.scope.chosen) ?? null,
    placeLabelOf,
    optionTitle: ({ id, title }) => speaker.sayIfKnown(`option.${id}`) ?? title,
    measureName: speaker.say(`measure.${result.scope.target?.measure ?? "total"}` satisfies MessageKey),
    hoursAtHouse: ({ labourHours }) => ({
      hours: Math.max(1, Math.ceil(labourHours / book.labour.crewCount)),
      visits: visitsFor(labourHours, labourHoursOfVisit(book)),
    }),
  };
}

/** The low and high end of a number; without draws its value is both. */
export const lowOf = ({ value, p10 }: Ranged): number => p10 ?? value;
export const highOf = ({ value, p90 }: Ranged): number => p90 ?? value;
export const hasRange = ({ p10, p90 }: Ranged): boolean => p10 !== undefined && p90 !== undefined;
