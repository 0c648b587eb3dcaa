import type { ScopeOption } from "#lib/job/result/plan-result.ts";
import type { Result } from "#lib/job/result/result-schema.ts";

/** The option that the numbers after the work belong to; undefined where no work is planned. */
export function chosenOption({ scope }: Result): ScopeOption | undefined {
  return scope.options.find((option) => option.id === scope.chosen);
}
