import path from "node:path";
import { defineConfig } from "@playwright/test";

// Set by `npm test`, which starts the product these journeys walk through.
const { E2E_BASE_URL, E2E_CHROMIUM, E2E_PART, E2E_TRACE } = process.env;

const results = path.resolve(import.meta.dirname, "..", "test-results", E2E_PART ?? "all");

/**
 * These change nothing that another journey looks at, and look at nothing that another changes: they walk through a copy
 * of the laboratory, beside the rest.
 */
const apart = ["accessibility", "full-run", "measured", "s5", "twenty-sensors"].map(
  (name) => `**/${name}.spec.ts`,
);

export default defineConfig({
  testDir: "journeys",
  ...(E2E_PART === "apart" ? { testMatch: apart } : {}),
  ...(E2E_PART === "together" ? { testIgnore: apart } : {}),
  outputDir: results,
  // One laboratory for its journeys, in which things happen in an order, as in a real one.
  workers: 1,
  fullyParallel: false,
  retries: 0,
  forbidOnly: true,
  // For a machine with much else to do: how long a page takes is the bench's question.
  timeout: 300_000,
  expect: { timeout: 30_000 },
  reporter: [["list"], ["json"]],
  use: {
    baseURL: E2E_BASE_URL,
    locale: "en-GB",
    timezoneId: "Europe/Berlin",
    viewport: { width: 1440, height: 900 },
    screenshot: "only-on-failure",
    // Filming every step takes a processor as long as the journey itself: E2E_TRACE=yes, to look into a failure.
    trace: E2E_TRACE === "yes" ? "retain-on-failure" : "off",
    actionTimeout: 45_000,
    launchOptions: {
      executablePath: E2E_CHROMIUM,
      args: [
        ...(process.getuid?.() === 0 ? ["--no-sandbox"] : []),
        ...["--disable-gpu", "--disable-quic", "--no-first-run", "--disable-sync"],
        ...["--disable-background-networking", "--disable-component-update"],
      ],
    },
  },
});
