/** What one part of the tests came to. Notes are shown above the last line. */
export type Outcome = {
  readonly name: string;
  readonly passed: number;
  readonly failed: number;
  readonly notes: readonly string[];
};

/** Two outcomes that were one crash must never look like success: nothing run is a failure. */
export function outcome(
  name: string,
  passed: number,
  failed: number,
  notes: readonly string[] = [],
): Outcome {
  if (passed + failed > 0) return { name, passed, failed, notes };
  return { name, passed, failed: 1, notes: [...notes, `${name}: no test was run`] };
}
