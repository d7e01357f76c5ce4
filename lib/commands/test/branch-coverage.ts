import { readFileSync } from "node:fs";
import path from "node:path";
import { checkout } from "@/lib/commands/checkout";
import { type Outcome, outcome } from "@/lib/commands/test/outcome";

type Place = { readonly start: { readonly line?: number } };

/** Istanbul's format, of which this is what is read: of each branch its places, and how often each was taken. */
type FileCoverage = {
  readonly path: string;
  readonly branchMap: Readonly<Record<string, { readonly loc: Place; readonly locations: readonly Place[] }>>;
  readonly b: Readonly<Record<string, readonly number[]>>;
};

export type Coverage = Readonly<Record<string, FileCoverage>>;

const name = "branches of metrology";
const measured = "lib/metrology/**/*.ts";
const LONGEST_LIST = 40;

export function coverageArguments(folder: string): readonly string[] {
  return [
    ...["--coverage.enabled", "--coverage.provider=v8", `--coverage.include=${measured}`],
    ...["--coverage.reporter=json", "--coverage.reportOnFailure", `--coverage.reportsDirectory=${folder}`],
  ];
}

/** Every branch of lib/metrology must be taken by some test of its own; those that are not are named. */
export function branchCoverage(folder: string): Outcome {
  try {
    return countBranches(
      JSON.parse(readFileSync(path.join(folder, "coverage-final.json"), "utf8")) as Coverage,
    );
  } catch (error) {
    return outcome(name, 0, 1, [`${name}: ${error instanceof Error ? error.message : error}`]);
  }
}

export function countBranches(coverage: Coverage): Outcome {
  let taken = 0;
  const missed: string[] = [];
  for (const { path: file, branchMap, b } of Object.values(coverage)) {
    for (const [key, counts] of Object.entries(b)) {
      for (const [n, count] of counts.entries()) {
        if (count > 0) taken += 1;
        else {
          const branch = branchMap[key];
          const line = branch?.locations[n]?.start.line ?? branch?.loc.start.line;
          missed.push(`${path.relative(checkout, file)}:${line}`);
        }
      }
    }
  }
  const share = `${name}: ${((100 * taken) / (taken + missed.length)).toFixed(2)} % taken by its tests`;
  const listed = [...new Set(missed)].slice(0, LONGEST_LIST).map((place) => `  not taken: ${place}`);
  return outcome(name, taken > 0 && missed.length === 0 ? 1 : 0, missed.length, [
    [share, ...listed].join("\n"),
  ]);
}
