import { ok, type Result, refuse } from "../refusal";
import type { Role } from "../staff/roles";
import { roleLabels } from "../staff/roles";
import type { GateAssessment, GateRow } from "./assessment";

export type OverrideWish = {
  readonly code: string;
  /** Those it is said of; none = the whole run. */
  readonly subjects: readonly string[];
  readonly reason: string;
};

export type OverrideDecision = {
  readonly code: GateRow["code"];
  readonly subjects: readonly string[];
  readonly reason: string;
  readonly reachesCertificate: boolean;
};

const rowOf = (assessment: GateAssessment, wish: OverrideWish): GateRow | undefined =>
  assessment.headings
    .flatMap(({ rows }) => rows)
    .find(
      ({ code, severity, subjects }) =>
        code === wish.code &&
        severity !== "ok" &&
        (subjects.length === 0
          ? wish.subjects.length === 0
          : wish.subjects.length > 0 && wish.subjects.every((one) => subjects.includes(one))),
    );

const least = 10;

/** Whether this person may set this row aside with this reason: as the policy says, and never more. */
export const decideOverride = (
  assessment: GateAssessment,
  wish: OverrideWish,
  roles: readonly Role[],
): Result<OverrideDecision> => {
  const row = rowOf(assessment, wish);
  if (!row)
    return refuse("wrong-state", "The gate no longer says this of this run. Look again. Nothing was stored.");
  if (row.severity === "warning")
    return refuse("wrong-state", "This is a warning: it stops nobody and needs no reason.");
  const { override } = row;
  if (!override)
    return refuse(
      "rule",
      `No reason sets this aside: ${row.reason} ${row.remedy} Nothing was stored.`.replaceAll("  ", " "),
    );
  if (!override.by.some((role) => roles.includes(role)))
    return refuse(
      "not-permitted",
      `Only ${override.by.map((role) => roleLabels[role].toLowerCase()).join(" or ")} may set this aside. Nothing was stored.`,
    );
  const reason = wish.reason.trim();
  if (reason.length < least)
    return refuse("invalid", "Nothing was stored.", {
      reason: "Say why it may start all the same, in a sentence: whoever reads this later was not there.",
    });
  const { code } = row;
  return ok({ code, subjects: wish.subjects, reason, reachesCertificate: override.reachesCertificate });
};
