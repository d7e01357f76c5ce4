import path from "node:path";
import { defineConfig } from "vitest/config";

const root = path.resolve(import.meta.dirname, "..");

/** What a mutant has to survive: the tests of the folders that are mutated, and no others. */
export default defineConfig({
  root,
  resolve: { alias: { "@": root } },
  test: {
    include: ["tests/metrology/{uncertainty,conformity,reporting}/**/*.test.ts"],
    // Millions of trials each: they prove the numbers, and would make the mutants take hours.
    exclude: ["tests/metrology/uncertainty/monte-carlo/published.test.ts"],
    setupFiles: [path.join(import.meta.dirname, "support", "no-console-error.ts")],
    testTimeout: 20_000,
  },
});
