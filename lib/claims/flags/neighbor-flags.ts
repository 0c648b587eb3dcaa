import type { ClaimFacts, InstrumentUse } from "../claim-facts.ts";
import { type ClaimFlag, type FlagEvidence, flag } from "./claim-flag.ts";
import { minutesBetween } from "./moment.ts";

/** Another claim of the program that shares a premise, readings, a photo or an instrument's day with this one. */
export interface NeighborClaim extends ClaimFacts {
  reference: string;
  contractorId: string;
}

export interface NeighborContext {
  own: ClaimFacts;
  contractorId: string;
  measureLifeYears: number;
  others: readonly NeighborClaim[];
}

const DAYS_PER_YEAR = 365.25;
const MS_PER_DAY = 86_400_000;
/** One test takes about this long, and the way to the next house besides. Source: practice. */
const LEAST_MINUTES_BETWEEN_PLACES = 30;

const daysBetween = (one: string, other: string) => Math.abs(Date.parse(one) - Date.parse(other)) / MS_PER_DAY;

/** A name tells instruments apart within one contractor only; a serial number does everywhere. */
function isSameInstrument(one: InstrumentUse, other: InstrumentUse, isSameContractor: boolean): boolean {
  return one.instrument === other.instrument && (isSameContractor || (one.hasSerialNumber && other.hasSerialNumber));
}

function placesEvidence({ own, contractorId, others }: NeighborContext): FlagEvidence[] {
  return others
    .filter((other) => other.premiseKey !== own.premiseKey)
    .flatMap((other) =>
      own.instrumentUses.flatMap((mine) => {
        const meeting = other.instrumentUses.find((theirs) => {
          if (!isSameInstrument(mine, theirs, other.contractorId === contractorId)) return false;
          if (!mine.date || !theirs.date) return false;
          const minutes = minutesBetween(
            { date: mine.date, time: mine.time },
            { date: theirs.date, time: theirs.time },
          );
          return minutes !== undefined && Math.abs(minutes) < LEAST_MINUTES_BETWEEN_PLACES;
        });
        if (!meeting) return [];
        return [
          {
            path: other.reference,
            says: `${mine.instrument}: here at ${mine.date} ${mine.time}, at another premise at ${meeting.date} ${meeting.time}`,
          },
        ];
      }),
    );
}

/** What a claim shares with other claims of the program. */
export function neighborFlags(context: NeighborContext): ClaimFlag[] {
  const { own, measureLifeYears, others } = context;
  const atPremise = others.filter((other) => other.premiseKey === own.premiseKey);
  const isRecent = (other: NeighborClaim) => daysBetween(other.completedOn, own.completedOn) <= DAYS_PER_YEAR;
  const isWithinLife = (other: NeighborClaim) =>
    !isRecent(other) && daysBetween(other.completedOn, own.completedOn) <= measureLifeYears * DAYS_PER_YEAR;
  const completed = (other: NeighborClaim) => ({
    path: other.reference,
    says: `Completed on ${other.completedOn}; this one on ${own.completedOn}`,
  });
  const photos = others.flatMap((other) =>
    other.photoHashes
      .filter((hash) => own.photoHashes.includes(hash))
      .map((hash) => ({ path: other.reference, says: `The photo ${hash.slice(0, 12)}… stands there too` })),
  );
  return [
    ...flag("premise-claimed-twice", atPremise.filter(isRecent).map(completed)),
    ...flag("earlier-measure-at-premise", atPremise.filter(isWithinLife).map(completed)),
    ...flag("photos-used-twice", photos),
    ...flag(
      "readings-used-twice",
      others
        .filter(({ readingsHash }) => readingsHash === own.readingsHash)
        .map(({ reference }) => ({ path: reference, says: "Every step of every test is the same" })),
    ),
    ...flag("instrument-in-two-places", placesEvidence(context)),
  ];
}
