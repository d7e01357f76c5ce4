// @ts-check

/**
 * Mutation testing of what a verdict rests on: `npm run mutate`. Every change that can be made to a line of these folders
 * must make a test of theirs fail; below 90 % the run fails. It takes minutes, so it stands outside `npm test`.
 * @type {import("@stryker-mutator/api/core").PartialStrykerOptions}
 */
const config = {
  packageManager: "npm",
  testRunner: "vitest",
  vitest: { configFile: "tests/mutation.config.ts", related: true },
  mutate: ["lib/metrology/{uncertainty,conformity,reporting}/**/*.ts"],
  // Copied for mutation: metrology and its tests, nothing else of the product.
  ignorePatterns: [
    "**",
    "!lib/metrology/**",
    "!tests/metrology/**",
    "!tests/support/no-console-error.ts",
    "!tests/mutation.config.ts",
    "!tsconfig.json",
    "!package.json",
  ],
  tempDirName: ".emfolio/mutation",
  cleanTempDir: "always",
  reporters: ["progress-append-only", "clear-text", "json"],
  jsonReporter: { fileName: ".emfolio/mutation.json" },
  clearTextReporter: { allowColor: false, allowEmojis: false, logTests: false, reportTests: false },
  allowConsoleColors: false,
  concurrency: 2,
  timeoutMS: 5_000,
  thresholds: { high: 95, low: 90, break: 90 },
};

export default config;
