import type { UnitSystem } from "#lib/units/display-unit.ts";
import type { AnswerReply, AnswerRequest } from "./answer-worker.ts";
import type { Draft } from "./draft.ts";
import { WARMING_ID } from "./warming.ts";

type Hear = (reply: AnswerReply) => void;

let engine: Worker | undefined;
let lastId = WARMING_ID;
const listeners = new Set<Hear>();

/** The worker of this tab. It starts when it is first needed and then serves page after page. */
function startedEngine(): Worker {
  if (engine) return engine;
  engine = new Worker(new URL("./answer-worker.ts", import.meta.url), { type: "module" });
  engine.addEventListener("message", ({ data }: MessageEvent<AnswerReply>) => {
    for (const hear of listeners) hear(data);
  });
  return engine;
}

/** Fetches and starts the engine, so that it is there when the first key falls. Nothing where it runs already. */
export function warmEngine(jobId: string, draft: Draft, units: UnitSystem): void {
  if (engine) return;
  startedEngine().postMessage({ id: WARMING_ID, jobId, draft, units, isQuick: true } satisfies AnswerRequest);
}

/** Sends a state of the form to the engine; the number that its replies carry. */
export function askEngine(request: Omit<AnswerRequest, "id">): number {
  lastId += 1;
  startedEngine().postMessage({ ...request, id: lastId } satisfies AnswerRequest);
  return lastId;
}

/** Hears every reply from now on, until the call that is given back. */
export function hearEngine(hear: Hear): () => void {
  listeners.add(hear);
  return () => listeners.delete(hear);
}
