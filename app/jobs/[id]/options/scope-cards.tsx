import { Button } from "#app/design/button.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import { pickScope } from "./actions.ts";
import styles from "./options.module.css";
import type { ScopeCardWords } from "./scope-card.ts";

/** Scopes side by side; on a phone one below the other. */
export function ScopeCards({
  jobId,
  cards,
  mayPick,
}: {
  jobId: string;
  cards: readonly ScopeCardWords[];
  mayPick: boolean;
}) {
  return (
    <div className={styles.cards}>
      {cards.map((card) => (
        <ScopeCard key={card.id} jobId={jobId} card={card} mayPick={mayPick} />
      ))}
    </div>
  );
}

function ScopeCard({ jobId, card, mayPick }: { jobId: string; card: ScopeCardWords; mayPick: boolean }) {
  return (
    <section
      id={card.isChosen ? "chosen" : card.id}
      aria-labelledby={`${card.id}-title`}
      className={card.isChosen ? `${styles.card} ${styles.chosen}` : styles.card}
    >
      <h3 id={`${card.id}-title`}>{card.title}</h3>
      <p className={styles.small}>{card.summary}</p>
      <p className={styles.price}>{card.price}</p>
      <dl className={styles.lines}>
        {card.lines.map(({ label, value }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <p className={styles.small}>{card.proof}</p>
      <Disclosure title={`Repairs ${countOf(card.does.length)}`}>
        <ul className={styles.list}>
          {card.does.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
      </Disclosure>
      {card.leaves.length === 0 ? (
        <p className={styles.small}>Leaves no leak that was found.</p>
      ) : (
        <Disclosure title={`Leaves ${countOf(card.leaves.length)}, and why`}>
          <ul className={styles.list}>
            {card.leaves.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        </Disclosure>
      )}
      {card.isChosen ? (
        <p className={styles.mark}>✓ Chosen for this job</p>
      ) : mayPick ? (
        <form action={pickScope}>
          <input type="hidden" name="jobId" value={jobId} />
          <input type="hidden" name="measures" value={JSON.stringify(card.measures)} />
          <Button type="submit" variant="secondary">
            Choose<span className={styles.hidden}> {card.title}</span>
          </Button>
        </form>
      ) : null}
    </section>
  );
}

const countOf = (count: number): string => (count === 1 ? "1 leak" : `${count} leaks`);
