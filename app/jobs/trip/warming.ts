/** A state of the form whose answer nobody waits for: it brings the engine and the tables of the place. */
export const WARMING_ID = 0;

/** Runs after which a browser has compiled what a key runs through: the first took five times as long as the ninth. */
export const WARMING_RUNS = 8;
