import { readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { checkout, inCheckout, stateFolder } from "@/lib/commands/checkout";
import { branchCoverage, coverageArguments } from "@/lib/commands/test/branch-coverage";
import { nameFailures } from "@/lib/commands/test/name-failure";
import { type Outcome, outcome } from "@/lib/commands/test/outcome";
import { run } from "@/lib/commands/test/run";

type Report = {
  readonly success: boolean;
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    /** Why the file did not load. */
    readonly message?: string;
    readonly assertionResults: readonly {
      readonly fullName: string;
      readonly status: string;
      readonly failureMessages?: readonly string[];
    }[];
  }[];
};

const program = inCheckout("node_modules", "vitest", "vitest.mjs");

/** What computes is tested apart from the rest, so that its branches can be counted without counting anything twice. */
const metrology = "tests/metrology/";
const withoutMetrology = { EMFOLIO_METROLOGY_APART: "yes", NO_COLOR: "1" };

/** The tests of what computes, and how many branches of it they take. */
export async function runMetrology(): Promise<readonly Outcome[]> {
  const folder = path.join(stateFolder, "coverage");
  rmSync(folder, { recursive: true, force: true });
  const args = [metrology, "--project=unit", ...coverageArguments(folder)];
  const proof = await tested("tests of metrology", args, { inBackground: false });
  return [proof, branchCoverage(folder)];
}

/** Unit and database tests: those that are named, or all but the tests of what computes, behind whatever else runs. */
export const runVitest = (filters: readonly string[]): Promise<Outcome> =>
  filters.length > 0
    ? tested("unit and database tests", filters, { inBackground: false })
    : tested("unit and database tests", [], { inBackground: true, environment: withoutMetrology });

/** The reporter's file is believed only if the runner ended as the file says. */
async function tested(
  name: string,
  args: readonly string[],
  options: { readonly inBackground: boolean; readonly environment?: Readonly<Record<string, string>> },
): Promise<Outcome> {
  const file = path.join(stateFolder, "vitest.json");
  rmSync(file, { force: true });
  const reporters = ["--reporter=dot", "--reporter=json", `--outputFile.json=${file}`];
  const { code, output } = await run(
    program,
    ["run", "-c", "tests/vitest.config.ts", ...reporters, ...args],
    {
      // In the background its dots would run through what the journeys say.
      show: !options.inBackground,
      minutes: 30,
      ...options,
    },
  );
  process.stdout.write(output);
  return countVitest(readReport(file), code, name);
}

export function countVitest(
  report: Report | undefined,
  code: number | null,
  name = "unit and database tests",
): Outcome {
  if (report === undefined) return outcome(name, 0, 1, [`${name}: the runner crashed (code ${code})`]);
  const tests = report.testResults.flatMap((file) =>
    file.assertionResults.map((test) => ({ ...test, file: path.relative(checkout, file.name) })),
  );
  const passed = tests.filter(({ status }) => status === "passed").length;
  const left = tests.filter(({ status }) => status !== "passed" && status !== "failed");
  // A file that fails while loading has no tests in it to count.
  const unloaded = report.testResults.filter(
    (file) => file.status === "failed" && !file.assertionResults.some(({ status }) => status === "failed"),
  );
  const failures = [
    ...tests
      .filter(({ status }) => status === "failed")
      .map(({ file, fullName, failureMessages }) => ({
        test: `${file} › ${fullName}`,
        why: failureMessages?.join("\n") ?? "",
      })),
    ...unloaded.map((file) => ({ test: path.relative(checkout, file.name), why: file.message ?? "" })),
  ];
  const notes = [...left.map(({ fullName }) => `not run: ${fullName}`), ...nameFailures(name, failures)];
  const silent = failures.length === 0 && code !== 0;
  if (silent) notes.push(`${name}: the runner ended with code ${code} although no test failed`);
  return outcome(name, passed, failures.length + (silent ? 1 : 0), notes);
}

function readReport(file: string): Report | undefined {
  try {
    return JSON.parse(readFileSync(file, "utf8")) as Report;
  } catch {
    return undefined;
  }
}
