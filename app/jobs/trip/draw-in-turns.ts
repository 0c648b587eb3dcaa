import { type DrawElsewhere, drawByShares } from "#lib/estimate/draw-share.ts";

/** A newer state of the form makes what is being worked out worthless. */
export class Superseded extends Error {}

/** A few milliseconds of work, so that a key that falls meanwhile is answered at once. */
const DRAWS_OF_TURN = 50;

/** Lets whatever waits go first, such as the next key. A timer would wait 4 ms each time. */
function nextTask(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

/** Gives way to what waits, and ends the work once nobody waits for it any more. */
export const turnsOf = (isAwaited: () => boolean) => async (): Promise<void> => {
  await nextTask();
  if (!isAwaited()) throw new Superseded();
};

/** Evaluates the draws here, a few at a time; the numbers are the same. */
export const drawInTurns =
  (nextTurn: () => Promise<void>): DrawElsewhere =>
  async (asked) => {
    const shares = drawByShares(asked, DRAWS_OF_TURN);
    for (;;) {
      await nextTurn();
      const step = shares.next();
      if (step.done) return step.value;
    }
  };
