import { readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { ensureBuild } from "@/lib/commands/build";
import { inCheckout, stateFolder } from "@/lib/commands/checkout";
import { Failure } from "@/lib/commands/failure";
import { findChromium } from "@/lib/commands/test/chromium";
import { startLaboratory } from "@/lib/commands/test/laboratory";
import { type Outcome, outcome } from "@/lib/commands/test/outcome";
import { run } from "@/lib/commands/test/run";

type Report = {
  readonly errors: readonly { readonly message?: string }[];
  readonly stats: {
    readonly expected: number;
    readonly unexpected: number;
    readonly flaky: number;
    readonly skipped: number;
  };
};

const name = "browser tests";

/** The journeys, in a real Chromium, against the production build on a fresh demo laboratory. */
export async function runBrowser(filters: readonly string[], log: (line: string) => void): Promise<Outcome> {
  try {
    const executable = findChromium(log);
    const signOff = await ensureBuild(log);
    const laboratory = await startLaboratory(log).catch((error: unknown) => {
      signOff();
      throw error;
    });
    try {
      return await journeys(filters, { ...laboratory.environment, E2E_CHROMIUM: executable });
    } finally {
      await laboratory.stop();
      signOff();
    }
  } catch (error) {
    const told =
      error instanceof Failure
        ? error.message
        : error instanceof Error
          ? (error.stack ?? error.message)
          : String(error);
    return outcome(name, 0, 1, [`${name}: ${told}`]);
  }
}

async function journeys(
  filters: readonly string[],
  environment: Readonly<Record<string, string>>,
): Promise<Outcome> {
  const file = path.join(stateFolder, "playwright.json");
  rmSync(file, { force: true });
  const program = inCheckout("node_modules", "@playwright", "test", "cli.js");
  const { code } = await run(program, ["test", "-c", "e2e/playwright.config.ts", ...filters], {
    show: true,
    minutes: 18,
    environment: { ...environment, PLAYWRIGHT_JSON_OUTPUT_FILE: file },
  });
  return countPlaywright(readReport(file), code);
}

/** A test that passed only at a second try did not pass. */
export function countPlaywright(report: Report | undefined, code: number | null): Outcome {
  if (report === undefined) return outcome(name, 0, 1, [`${name}: the runner crashed (code ${code})`]);
  const { expected, unexpected, flaky, skipped } = report.stats;
  const notes = skipped > 0 ? [`${name}: ${skipped} not run`] : [];
  const failed = unexpected + flaky;
  const silent = failed === 0 && (code !== 0 || report.errors.length > 0);
  if (silent) notes.push(`${name}: ${report.errors[0]?.message ?? `the runner ended with code ${code}`}`);
  return outcome(name, expected, failed + (silent ? 1 : 0), notes);
}

function readReport(file: string): Report | undefined {
  try {
    return JSON.parse(readFileSync(file, "utf8")) as Report;
  } catch {
    return undefined;
  }
}
