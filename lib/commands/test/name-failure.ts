import { stripVTControlCharacters } from "node:util";

const LONGEST_LIST = 20;
const LINES_TOLD = 8;

/** One test that failed, and what it said. */
export type Failed = { readonly test: string; readonly why: string };

/** Told again beside the numbers: where much is printed, only the end of it may be kept. */
export function nameFailures(name: string, failures: readonly Failed[]): readonly string[] {
  const listed = failures
    .slice(0, LONGEST_LIST)
    .map(({ test, why }) => `${name}, FAILED: ${test}\n${firstLines(why)}`);
  const more = failures.length - listed.length;
  return more > 0 ? [...listed, `${name}: ${more} more FAILED`] : listed;
}

function firstLines(why: string): string {
  const lines = stripVTControlCharacters(why)
    .split("\n")
    .filter((line) => line.trim() !== "");
  return lines
    .slice(0, LINES_TOLD)
    .map((line) => `  ${line}`)
    .join("\n");
}
