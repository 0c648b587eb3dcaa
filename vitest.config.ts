import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    setupFiles: ["tests/steady-draws.ts"],
    exclude: ["tests/proofs/**", "tests/bench/**", "node_modules/**"],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    pool: "forks",
    maxWorkers: 2,
  },
});
