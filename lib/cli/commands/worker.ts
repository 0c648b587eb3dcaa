import { parseArgs } from "node:util";
import { openStore } from "#lib/store/open-store.ts";
import { workOnClaims } from "#lib/work/claims/work-on-claims.ts";
import type { Command } from "../command.ts";
import { stopSignal } from "../stop-signal.ts";

/** Checks claims of imports, beside any number of other workers. */
export const workerCommand: Command = {
  name: "worker",
  usage: "worker [--until-idle]",
  summary:
    "Checks imported claims, chunk by chunk, beside any number of other workers on one database; Ctrl-C ends it.",
  examples: ["npm run -s ductmend -- worker"],
  async run(context) {
    const { values } = parseArgs({ args: [...context.args], options: { "until-idle": { type: "boolean" } } });
    const store = await openStore();
    const { signal } = stopSignal();
    context.say("Working; Ctrl-C ends it after the chunk in hand.\n");
    try {
      const chunks = await workOnClaims(store, {
        signal,
        goesOn: (openCount) => values["until-idle"] !== true || openCount > 0,
        onChunk: ({ batchId, chunk }, isKept) =>
          context.say(`chunk ${chunk} of ${batchId} ${isKept ? "checked" : "was done before"}\n`),
        onFailure: ({ batchId, chunk }, thrown) =>
          context.say(`chunk ${chunk} of ${batchId} failed and goes back into the queue: ${String(thrown)}\n`),
      });
      context.out(`${JSON.stringify({ chunks })}\n`);
      return 0;
    } finally {
      await store.close();
    }
  },
};
