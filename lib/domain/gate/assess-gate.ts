import type { AssessedHeading, GateAssessment, GateRow, GateSeverity, GivenReason } from "./assessment";
import { gateChecks } from "./checks";
import type { Found, GateCheck } from "./finding";
import { groupRows } from "./group-rows";
import { gateHeadings } from "./headings";
import { neverOverridable } from "./never-overridable";
import type { GatePlan } from "./plan";
import type { GatePolicy } from "./policy";

const gravity = ["ok", "warning", "overridable", "refuse"] as const satisfies readonly GateSeverity[];

/** A row whose reason is given no longer stops anybody. */
const weight = ({ severity, given }: GateRow): number =>
  gravity.indexOf(severity === "overridable" && given !== null ? "warning" : severity);

const overrideOf = ({ code, outcome }: Found, policy: GatePolicy) =>
  outcome === "warning" || neverOverridable.has(code)
    ? null
    : (policy.overrides.find((one) => one.code === code) ?? null);

const lastTimeOf = (code: string, { lastTime }: GatePlan): GateRow["asLastTime"] => {
  const before = lastTime?.accepted.find((one) => one.code === code);
  return lastTime && before ? { run: lastTime.run, reason: before.reason } : null;
};

const rowOf = (found: Found, plan: GatePlan, policy: GatePolicy, given: readonly GivenReason[]): GateRow => {
  const override = overrideOf(found, policy);
  const reason = given.findLast((one) => one.code === found.code && one.subject === found.subject);
  return {
    code: found.code,
    severity: found.outcome === "warning" ? "warning" : override ? "overridable" : "refuse",
    subjects: found.subject === "" ? [] : [found.subject],
    reason: found.reason,
    remedy: found.remedy,
    source: found.source,
    override,
    given: override && reason ? reason.reason : null,
    asLastTime: override ? lastTimeOf(found.code, plan) : null,
  };
};

const met = ({ code, fine, source }: GateCheck): GateRow => ({
  code,
  severity: "ok",
  subjects: [],
  reason: fine,
  remedy: "",
  source,
  override: null,
  given: null,
  asLastTime: null,
});

/**
 * What the gate says of a run on its day: every rule under its heading, met or not, rows that say the same of several
 * sensors said once. `given`: reasons on record, oldest first; those against rows that are refused count for nothing.
 */
export const assessGate = (
  plan: GatePlan,
  policy: GatePolicy,
  given: readonly GivenReason[] = [],
): GateAssessment => {
  const assessed = gateChecks.map((check) => {
    const found = check.assess(plan, policy);
    const rows = found.map((one) => rowOf(one, plan, policy, given));
    return { heading: check.heading, rows: rows.length > 0 ? groupRows(rows) : [met(check)] };
  });
  const headings = gateHeadings.map((heading): AssessedHeading => {
    const rows = assessed.filter((one) => one.heading === heading).flatMap((one) => one.rows);
    const gravest = Math.max(0, ...rows.map(weight));
    return { heading, severity: gravity[gravest] ?? "ok", rows };
  });
  const isAt = (severity: GateSeverity): boolean => headings.some((one) => one.severity === severity);
  return {
    headings,
    verdict: isAt("refuse") ? "refused" : isAt("overridable") ? "needs-reasons" : "may-start",
  };
};
