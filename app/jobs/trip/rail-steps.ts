import type { TripStep } from "#app/design/trip-rail.tsx";
import type { Draft } from "./draft.ts";
import type { MissingField } from "./missing.ts";
import { STEP_DETAILS, STEP_WORDS, TRIP_STEPS, type TripStepId } from "./trip-steps.ts";

/** The rail at the left: what was answered in small print, what is still needed, and where the trip leads. */
export function railSteps({
  draft,
  step,
  problems,
  hrefOf,
}: {
  draft: Draft;
  step: TripStepId | "result";
  problems: readonly MissingField[];
  hrefOf: (id: string) => string;
}): TripStep[] {
  const steps = TRIP_STEPS.map((id): TripStep => {
    const detail = STEP_DETAILS[id](draft);
    const open = problems.filter((each) => each.step === id).length;
    return {
      id,
      label: STEP_WORDS[id].label,
      href: hrefOf(id),
      state: id === step ? "current" : detail && open === 0 ? "done" : "waiting",
      ...(detail ? { detail } : {}),
      ...(open > 0 && (detail || id === step) ? { missing: `${open} still needed` } : {}),
    };
  });
  return [
    ...steps,
    { id: "result", label: "Result", href: hrefOf("result"), state: step === "result" ? "current" : "waiting" },
  ];
}
