import { readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { inCheckout, stateFolder } from "@/lib/commands/checkout";
import { type Outcome, outcome } from "@/lib/commands/test/outcome";
import { run } from "@/lib/commands/test/run";

type Report = {
  readonly success: boolean;
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly assertionResults: readonly { readonly fullName: string; readonly status: string }[];
  }[];
};

/** Unit and database tests. The reporter's file is believed only if the runner ended as the file says. */
export async function runVitest(filters: readonly string[]): Promise<Outcome> {
  const file = path.join(stateFolder, "vitest.json");
  rmSync(file, { force: true });
  const program = inCheckout("node_modules", "vitest", "vitest.mjs");
  const reporters = ["--reporter=dot", "--reporter=json", `--outputFile.json=${file}`];
  const { code } = await run(program, ["run", "-c", "tests/vitest.config.ts", ...reporters, ...filters], {
    show: true,
    minutes: 10,
  });
  return countVitest(readReport(file), code);
}

export function countVitest(report: Report | undefined, code: number | null): Outcome {
  const name = "unit and database tests";
  if (report === undefined) return outcome(name, 0, 1, [`${name}: the runner crashed (code ${code})`]);
  const tests = report.testResults.flatMap((file) => file.assertionResults);
  const passed = tests.filter(({ status }) => status === "passed").length;
  const left = tests.filter(({ status }) => status !== "passed" && status !== "failed");
  // A file that fails while loading has no tests in it to count.
  const unloaded = report.testResults.filter(
    (file) => file.status === "failed" && !file.assertionResults.some(({ status }) => status === "failed"),
  );
  const failed = tests.filter(({ status }) => status === "failed").length + unloaded.length;
  const notes = left.map(({ fullName }) => `not run: ${fullName}`);
  const silent = failed === 0 && code !== 0;
  if (silent) notes.push(`${name}: the runner ended with code ${code} although no test failed`);
  return outcome(name, passed, failed + (silent ? 1 : 0), notes);
}

function readReport(file: string): Report | undefined {
  try {
    return JSON.parse(readFileSync(file, "utf8")) as Report;
  } catch {
    return undefined;
  }
}
