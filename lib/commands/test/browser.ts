import { readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { ensureBuild } from "@/lib/commands/build";
import { inCheckout, stateFolder } from "@/lib/commands/checkout";
import { Failure } from "@/lib/commands/failure";
import { findChromium } from "@/lib/commands/test/chromium";
import { startLaboratories } from "@/lib/commands/test/laboratory";
import { type Failed, nameFailures } from "@/lib/commands/test/name-failure";
import { type Outcome, outcome } from "@/lib/commands/test/outcome";
import { run } from "@/lib/commands/test/run";

type Suite = {
  readonly suites?: readonly Suite[];
  readonly specs?: readonly {
    readonly file: string;
    readonly title: string;
    readonly ok: boolean;
    readonly tests: readonly {
      readonly results: readonly { readonly errors: readonly { readonly message?: string }[] }[];
    }[];
  }[];
};

type Report = {
  readonly suites?: readonly Suite[];
  readonly errors: readonly { readonly message?: string }[];
  readonly stats: {
    readonly expected: number;
    readonly unexpected: number;
    readonly flaky: number;
    readonly skipped: number;
  };
};

const name = "browser tests";

/** Which journeys: those that follow one another, those that stand alone (`e2e/playwright.config.ts`), or named ones. */
type Part = { readonly part?: "together" | "apart"; readonly filters: readonly string[] };

const partsOf = (filters: readonly string[]): readonly Part[] =>
  filters.length > 0
    ? [{ filters }]
    : [
        { part: "together", filters },
        { part: "apart", filters },
      ];

/**
 * The journeys, in a real Chromium, against the production build on a fresh demo laboratory; all of them on two copies of
 * it at once, since a journey waits as much as it works.
 */
export async function runBrowser(
  filters: readonly string[],
  log: (line: string) => void,
): Promise<readonly Outcome[]> {
  try {
    const executable = findChromium(log);
    const signOff = await ensureBuild(log);
    const parts = partsOf(filters);
    const { laboratories, stop } = await startLaboratories(parts.length, log).catch((error: unknown) => {
      signOff();
      throw error;
    });
    try {
      return await Promise.all(
        laboratories.map((environment, at) =>
          journeys(parts[at] as Part, { ...environment, E2E_CHROMIUM: executable }),
        ),
      );
    } finally {
      await stop();
      signOff();
    }
  } catch (error) {
    const told =
      error instanceof Failure
        ? error.message
        : error instanceof Error
          ? (error.stack ?? error.message)
          : String(error);
    return [outcome(name, 0, 1, [`${name}: ${told}`])];
  }
}

async function journeys(
  { part, filters }: Part,
  environment: Readonly<Record<string, string>>,
): Promise<Outcome> {
  const file = path.join(stateFolder, `playwright-${part ?? "named"}.json`);
  rmSync(file, { force: true });
  const program = inCheckout("node_modules", "@playwright", "test", "cli.js");
  const { code } = await run(program, ["test", "-c", "e2e/playwright.config.ts", ...filters], {
    show: true,
    minutes: 30,
    environment: { ...environment, PLAYWRIGHT_JSON_OUTPUT_FILE: file, ...(part ? { E2E_PART: part } : {}) },
  });
  return countPlaywright(readReport(file), code, part ? `${name}, ${part}` : name);
}

/** A test that passed only at a second try did not pass. */
export function countPlaywright(
  report: Report | undefined,
  code: number | null,
  name = "browser tests",
): Outcome {
  if (report === undefined) return outcome(name, 0, 1, [`${name}: the runner crashed (code ${code})`]);
  const { expected, unexpected, flaky, skipped } = report.stats;
  const notes = [
    ...(skipped > 0 ? [`${name}: ${skipped} not run`] : []),
    ...nameFailures(name, (report.suites ?? []).flatMap(failuresIn)),
  ];
  const failed = unexpected + flaky;
  const silent = failed === 0 && (code !== 0 || report.errors.length > 0);
  if (silent) notes.push(`${name}: ${report.errors[0]?.message ?? `the runner ended with code ${code}`}`);
  return outcome(name, expected, failed + (silent ? 1 : 0), notes);
}

function failuresIn({ suites = [], specs = [] }: Suite): readonly Failed[] {
  const own = specs
    .filter(({ ok, tests }) => !ok || tests.some(({ results }) => results.length > 1))
    .map(({ file, title, tests }) => ({
      test: `${file} › ${title}`,
      why: tests
        .flatMap(({ results }) => results)
        .flatMap(({ errors }) => errors.map(({ message }) => message ?? ""))
        .join("\n"),
    }));
  return [...own, ...suites.flatMap(failuresIn)];
}

function readReport(file: string): Report | undefined {
  try {
    return JSON.parse(readFileSync(file, "utf8")) as Report;
  } catch {
    return undefined;
  }
}
