import { ok, type Result, refuse } from "../refusal";
import { asRunState, runStateLabels } from "../run/states";
import type { GateAssessment } from "./assessment";
import { saidOf } from "./subject-words";

/** The gate stands before the run and is asked nothing once readings are there. */
export const demandBeforeStart = (run: {
  readonly number: string;
  readonly state: string;
}): Result<"before"> => {
  const state = asRunState(run.state);
  return state === "planned"
    ? ok("before")
    : refuse(
        "wrong-state",
        `Run ${run.number} is ${runStateLabels[state].toLowerCase()}: its gate lies behind it. Nothing was stored.`,
      );
};

/** Whether the run may start, or everything that stands in its way at once. */
export const decideStart = (
  run: { readonly number: string; readonly state: string },
  assessment: GateAssessment,
): Result<"start"> => {
  const before = demandBeforeStart(run);
  if (!before.ok) return before;
  if (assessment.verdict === "may-start") return ok("start");
  const rows = assessment.headings.flatMap(({ rows }) => rows);
  const stopping =
    assessment.verdict === "refused"
      ? rows.filter(({ severity }) => severity === "refuse")
      : rows.filter(({ severity, given }) => severity === "overridable" && given === null);
  const said = stopping.map(({ code, subjects, reason }) => saidOf(code, subjects, reason)).join(" ");
  return refuse(
    "rule",
    assessment.verdict === "refused"
      ? `The run does not start: ${said}`
      : `The run does not start before each of these is mended, or has its reason: ${said}`,
  );
};
