import { type Draft, listAt } from "../draft.ts";

/** The instruments in use of the organization, as a job would hold them. */
export interface OwnInstruments {
  fans: readonly Draft[];
  gauges: readonly Draft[];
}

export interface OfferedInstrument {
  list: keyof OwnInstruments;
  instrument: Draft;
  /** The job holds it as it was before. */
  isNewer: boolean;
}

const LISTS = ["fans", "gauges"] as const;

/** What the organization has and a job does not, or holds in an older state. */
export function offeredInstruments(own: OwnInstruments, draft: Draft): OfferedInstrument[] {
  return LISTS.flatMap((list) => {
    const taken = listAt(draft, `instruments/${list}`);
    return own[list].flatMap((instrument): OfferedInstrument[] => {
      const known = taken.find(({ id }) => id === instrument.id);
      if (known && isSame(known, instrument)) return [];
      return [{ list, instrument, isNewer: known !== undefined }];
    });
  });
}

/** The same whatever the order of the keys. */
function isSame(one: unknown, other: unknown): boolean {
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return one === other;
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].every((key) => isSame(one[key as keyof typeof one], other[key as keyof typeof other]));
}
