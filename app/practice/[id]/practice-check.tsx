import { Notice } from "#app/design/notice.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import type { PracticeView } from "#lib/simulate/practice.ts";

/** Find out for yourself first; what is wrong, why, and the next move open one after the other. */
export function PracticeCheck({ view }: { view: PracticeView }) {
  const [first, ...others] = view.diagnoses;
  if (!first) {
    return (
      <Disclosure title="Can this reading be trusted?">
        <Notice kind="good" title="Yes." isLive>
          <p>Hoses, house and fans are as they should be, and the pressure is on target.</p>
        </Notice>
      </Disclosure>
    );
  }
  const isProblem = first.severity === "problem";
  return (
    <Disclosure title="Can this reading be trusted?">
      <Notice kind={isProblem ? "problem" : "doubt"} title={first.what} isLive>
        <p>{first.why}</p>
        <Disclosure title="What would you do next?" key={first.code}>
          <p>{first.nextMove}</p>
        </Disclosure>
        {others.length > 0 ? (
          <p>
            {others.length === 1 ? "One more thing waits" : `${others.length} more things wait`} behind it. Put this
            right first.
          </p>
        ) : null}
      </Notice>
    </Disclosure>
  );
}
