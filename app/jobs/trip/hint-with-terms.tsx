import type { ReactNode } from "react";
import { Term } from "#app/design/term.tsx";
import { termsOf } from "#app/words/find-terms.ts";
import { WithTerms } from "#app/words/with-terms.tsx";

/** In a list only the first entry explains its labels: the others ask the same. */
const isFirstOfItsKind = (path: string): boolean => !/\/[1-9]\d*(\/|$)/.test(path);

/** A hint whose trade terms explain themselves, and after it those of the label. */
export function hintWithTerms({ path, label, hint }: { path: string; label: string; hint: ReactNode }): ReactNode {
  const said = typeof hint === "string" ? termsOf(hint) : [];
  const ofLabel = isFirstOfItsKind(path) ? termsOf(label).filter((entry) => !said.includes(entry)) : [];
  if (said.length + ofLabel.length === 0) return hint;
  return (
    <>
      {typeof hint === "string" ? <WithTerms>{hint}</WithTerms> : hint}
      {ofLabel.length > 0 ? (
        <>
          {hint ? " " : null}Explain{" "}
          {ofLabel.map(({ term, meaning }, index) => (
            <span key={term}>
              {index > 0 ? ", " : null}
              <Term meaning={meaning}>{term}</Term>
            </span>
          ))}
          .
        </>
      ) : null}
    </>
  );
}
