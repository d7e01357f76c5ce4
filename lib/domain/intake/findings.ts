import { z } from "zod";

export const checkNames = ["loop-resistance", "insulation", "polarity", "type"] as const;
export type CheckName = (typeof checkNames)[number];
export const checkLabels: Readonly<Record<CheckName, string>> = {
  "loop-resistance": "Loop resistance",
  insulation: "Insulation",
  polarity: "Polarity",
  type: "Type",
};

export const verdicts = ["within", "outside", "no-limit", "not-checked"] as const;
export type Verdict = (typeof verdicts)[number];
export const verdictLabels: Readonly<Record<Verdict, string>> = {
  within: "Within its limit",
  outside: "Outside its limit",
  "no-limit": "No limit to hold it against",
  "not-checked": "Not checked",
};

/** One check against the policy as it stood at intake, kept with the intake. */
export const IntakeFinding = z.strictObject({
  check: z.enum(checkNames),
  verdict: z.enum(verdicts),
  /** What was found and what it was held against, as a part of a sentence. */
  words: z.string(),
});
export type IntakeFinding = z.output<typeof IntakeFinding>;

export const readFindings = (stored: string): readonly IntakeFinding[] =>
  z.array(IntakeFinding).parse(JSON.parse(stored));

export const failedChecks = (findings: readonly IntakeFinding[]): readonly string[] =>
  findings.filter(({ verdict }) => verdict === "outside").map(({ words }) => words);
