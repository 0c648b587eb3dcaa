import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    setupFiles: ["tests/steady-draws.ts"],
    exclude: ["tests/proofs/**", "tests/bench/**", "node_modules/**"],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    pool: "forks",
    // A worker keeps its modules from file to file: loading the engine and its tables once saves 90 s of the suite.
    isolate: false,
    maxWorkers: 2,
  },
});
