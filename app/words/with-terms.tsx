import { Term } from "#app/design/term.tsx";
import { findTerms } from "./find-terms.ts";

/** A sentence whose trade terms explain themselves when they are pressed. */
export function WithTerms({ children }: { children: string }) {
  return findTerms(children).map((piece, index) =>
    typeof piece === "string" ? (
      piece
    ) : (
      // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of a sentence are in a fixed order
      <Term key={index} meaning={piece.entry.meaning}>
        {piece.words}
      </Term>
    ),
  );
}
