import path from "node:path";
import { stateFolder } from "@/lib/commands/checkout";
import { Failure, runCommand } from "@/lib/commands/failure";
import { ensureGenerated } from "@/lib/commands/generate";
import { withLock } from "@/lib/commands/lock";
import { runBrowser } from "@/lib/commands/test/browser";
import { checkBoundaries, checkLint, checkTypes } from "@/lib/commands/test/checks";
import type { Outcome } from "@/lib/commands/test/outcome";
import { stopRunning } from "@/lib/commands/test/run";
import { ensureTools } from "@/lib/commands/test/tools";
import { runMetrology, runVitest } from "@/lib/commands/test/vitest";

const parts = ["types", "lint", "boundaries", "vitest", "browser"] as const;
type Part = (typeof parts)[number];

const log = (line: string) => void process.stdout.write(`${line}\n`);

/** `npm test` runs all; `npm test -- lint vitest tests/data` runs the named parts, narrowed to the named files. */
async function test(args: readonly string[]): Promise<number> {
  const filters = args.filter((arg) => !parts.includes(arg as Part));
  if (filters.length > 0 && filters.length === args.length) {
    throw new Failure(
      `Name the part that the files belong to, one of ${parts.join(", ")}: npm test -- vitest tests/data`,
    );
  }
  const wanted = (part: Part) => args.length === 0 || args.includes(part);
  const outcomes: Outcome[] = [];
  await ensureGenerated(log);
  const checks = { types: checkTypes, lint: checkLint, boundaries: checkBoundaries };
  const running = (Object.keys(checks) as (keyof typeof checks)[])
    .filter(wanted)
    .map((part) => checks[part]());
  if (running.length > 0) log("Checking types, lint and boundaries");
  outcomes.push(...(await Promise.all(running)));
  if (wanted("vitest") && filters.length === 0) outcomes.push(...(await runMetrology()));
  if (wanted("vitest") || wanted("browser")) ensureTools(log);
  // Side by side: a browser waits as much as it works, and two processors stand half idle under it.
  const both = [
    ...(wanted("vitest") ? [runVitest(filters).then((one) => [one])] : []),
    ...(wanted("browser") ? [runBrowser(filters, log)] : []),
  ];
  outcomes.push(...(await Promise.all(both)).flat());
  return summarise(outcomes);
}

function summarise(outcomes: readonly Outcome[]): number {
  for (const { notes } of outcomes) for (const note of notes) log(`\n${note}`);
  log("");
  for (const { name, passed, failed } of outcomes)
    log(`${name}: ${passed} passed${failed > 0 ? `, ${failed} FAILED` : ""}`);
  const total = (count: (outcome: Outcome) => number) =>
    outcomes.reduce((sum, outcome) => sum + count(outcome), 0);
  const failed = total((outcome) => outcome.failed);
  log(`${total((outcome) => outcome.passed)} passed, ${failed} failed`);
  return failed === 0 ? 0 : 1;
}

for (const signal of ["SIGINT", "SIGTERM"] as const) process.on(signal, stopRunning);
await runCommand(() =>
  withLock(
    path.join(stateFolder, "test.lock"),
    () => test(process.argv.slice(2)),
    (pid) => log(`Waiting for the tests of process ${pid}`),
  ),
);
process.exit();
