import { type RecomputeOutcome, recomputeClaim } from "#lib/claims/recompute-claim.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { parseJson } from "#lib/errors/parse-json.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";

/** Recomputes a packet from its text; `name` says which text it is. What is not JSON is invalid, as what is no claim. */
export async function recomputeText(
  text: string,
  name: string,
  withDraws: (packet: unknown) => boolean,
): Promise<RecomputeOutcome> {
  try {
    const packet = parseJson(text, name);
    return await recomputeClaim(packet, {
      loadReference: loadReferenceData,
      withDraws: withDraws(packet),
      asWritten: text,
    });
  } catch (thrown) {
    if (!(thrown instanceof InputProblem)) throw thrown;
    return { outcome: "invalid", errors: [...thrown.errors] };
  }
}
