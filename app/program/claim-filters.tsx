import Form from "next/form";
import { Button } from "#app/design/button.tsx";
import { PlainSelect } from "#app/design/plain-select.tsx";
import { TextField } from "#app/design/text-field.tsx";
import type { ClaimFilter } from "#lib/store/repositories/claims.ts";
import { CLAIM_STATE_WORDS, isClaimState, isOutcome, OUTCOME_WORDS } from "./claim-words.ts";
import styles from "./program.module.css";

export type ClaimSearch = Partial<Record<"q" | "state" | "outcome" | "flags" | "contractor" | "after", string>>;

/** What an address asks for, without what it does not know. */
export function filterOf({ q, state, outcome, flags, contractor, after }: ClaimSearch): ClaimFilter {
  return {
    ...(q && { reference: q }),
    ...(isClaimState(state) && { state }),
    ...(isOutcome(outcome) && { outcome }),
    ...(flags === "some" || flags === "none" ? { isFlagged: flags === "some" } : {}),
    ...(contractor && { contractorId: contractor }),
    ...(after && { cursor: after }),
  };
}

const all = { value: "", label: "All" };
const choices = (words: Readonly<Record<string, string>>) => [
  all,
  ...Object.entries(words).map(([value, label]) => ({ value, label })),
];

/** A search that is an address: it can be kept, shared and gone back to, and needs no script. */
export function ClaimFilters({
  search,
  contractors,
  ownId,
}: {
  search: ClaimSearch;
  contractors: ReadonlyMap<string, string>;
  ownId: string;
}) {
  const others = [...contractors].filter(([id]) => id !== ownId);
  return (
    <Form action="/program" className={styles.filters} role="search">
      <TextField label="Claim" name="q" defaultValue={search.q} autoComplete="off" placeholder="Start of its number" />
      <PlainSelect label="State" name="state" defaultValue={search.state ?? ""} options={choices(CLAIM_STATE_WORDS)} />
      <PlainSelect
        label="Recomputed"
        name="outcome"
        defaultValue={search.outcome ?? ""}
        options={choices(OUTCOME_WORDS)}
      />
      <PlainSelect
        label="To ask about"
        name="flags"
        defaultValue={search.flags ?? ""}
        options={choices({ some: "Something", none: "Nothing" })}
      />
      {others.length > 0 ? (
        <PlainSelect
          label="Contractor"
          name="contractor"
          defaultValue={search.contractor ?? ""}
          options={[all, ...others.map(([value, label]) => ({ value, label }))]}
        />
      ) : null}
      <Button type="submit" variant="secondary">
        Find
      </Button>
    </Form>
  );
}
