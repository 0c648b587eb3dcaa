import { Notice } from "#app/design/notice.tsx";
import type { MissingField } from "./missing.ts";
import styles from "./trip.module.css";

/** Why one who asked for the result stands at a step of the trip, and what is left to do there. */
export function NeededForResult({
  missing,
  hrefOf,
  resultHref,
}: {
  missing: readonly MissingField[];
  hrefOf: (missing: MissingField) => string;
  resultHref: string;
}) {
  if (missing.length === 0)
    return (
      <Notice kind="good" title="That is all the result needs">
        <p>
          <a href={resultHref}>See the result</a>
        </p>
      </Notice>
    );
  return (
    <Notice kind="info" title="The result still needs this">
      <ul className={styles.missingList}>
        {missing.map((each) => (
          <li key={each.pointer}>
            <a href={hrefOf(each)}>{each.text}</a>
          </li>
        ))}
      </ul>
    </Notice>
  );
}
