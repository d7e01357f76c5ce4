import {
  type FileVerdict,
  type Indication,
  type Step,
  type StepKey,
  stepKeys,
  type Verdict,
} from "./verdict";

/** A step, and what it says against the document. */
export type StepFinding = Step & {
  readonly against?: {
    readonly verdict: Exclude<Verdict, "total-passed">;
    readonly indication: Indication;
  };
};

export const notReached = "Not looked at, because an earlier step ended the check.";

/** Whether the check went as far as what the document says: before, what it carries is not known. */
export const isContentReached = ({ steps }: Pick<FileVerdict, "steps">): boolean =>
  steps.some(({ key, state }) => key === "content" && state !== "skipped");

/** A failed step outweighs one that could not be decided, and the earlier one speaks. */
export const concluded = (
  findings: readonly StepFinding[],
  passed: string,
): Pick<FileVerdict, "verdict" | "indication" | "reason" | "steps"> => {
  const steps = stepKeys.map((key) => stepOf(key, findings));
  const decisive =
    findings.find(({ against }) => against?.verdict === "total-failed") ??
    findings.find(({ against }) => against !== undefined);
  if (decisive?.against === undefined)
    return { verdict: "total-passed", indication: "PASSED", reason: passed, steps };
  return { ...decisive.against, reason: decisive.text, steps };
};

function stepOf(wanted: StepKey, findings: readonly StepFinding[]): Step {
  const found = findings.find(({ key }) => key === wanted);
  if (found === undefined) return { key: wanted, state: "skipped", text: notReached };
  const { key, state, text } = found;
  return { key, state, text };
}
