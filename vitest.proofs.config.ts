import { defineConfig } from "vitest/config";

/** `npm run prove`: the long runs that show a claim of the product on thousands of cases; not part of `npm test`. */
export default defineConfig({
  test: {
    include: ["tests/proofs/**/*.test.ts"],
    testTimeout: 30 * 60_000,
    // A proof starts the app before it and stops it after it.
    hookTimeout: 5 * 60_000,
    pool: "forks",
    maxWorkers: 2,
    reporters: ["verbose"],
  },
});
