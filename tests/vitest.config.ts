import path from "node:path";
import { defineConfig } from "vitest/config";

const root = path.resolve(import.meta.dirname, "..");
const here = (...parts: string[]) => path.join(import.meta.dirname, ...parts);

/** The folders of tests that get a database; everything else runs without one. */
const withDatabase = ["data", "operations", "views", "web", "jobs", "seed", "commands", "prisma"].map(
  (folder) => `tests/${folder}/**/*.test.{ts,tsx}`,
);

/** `npm test` runs these first and by themselves, to count branches; then all else, without running them twice. */
const apart = process.env.EMFOLIO_METROLOGY_APART === "yes" ? ["tests/metrology/**"] : [];

/** Pure code: nothing of one file can be left over for the next, so that they share what they load. */
const pure = ["domain", "drawing", "station", "files"].map((folder) => `tests/${folder}/**/*.test.{ts,tsx}`);

const setupFiles = [here("support", "no-console-error.ts")];

export default defineConfig({
  root,
  resolve: {
    alias: { "@": root, "server-only": path.join(root, "node_modules", "server-only", "empty.js") },
  },
  test: {
    pool: "forks",
    maxWorkers: 2,
    globals: false,
    allowOnly: false,
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["tests/**/*.test.{ts,tsx}"],
          exclude: [...withDatabase, ...pure, ...apart],
          setupFiles,
          testTimeout: 240_000,
        },
      },
      {
        extends: true,
        test: {
          name: "pure",
          include: pure,
          isolate: false,
          setupFiles,
          testTimeout: 240_000,
        },
      },
      {
        extends: true,
        test: {
          name: "database",
          include: withDatabase,
          // Loading the database's client anew for each file took longer than most files.
          isolate: false,
          setupFiles: [...setupFiles, here("support", "leave-nothing.ts")],
          globalSetup: [here("support", "start-database.ts")],
          testTimeout: 240_000,
          hookTimeout: 240_000,
        },
      },
    ],
  },
});
