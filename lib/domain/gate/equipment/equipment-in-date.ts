import { equipmentProblem } from "../../run/equipment-problem";
import type { EquipmentCandidate } from "../../run/load-candidates";
import type { GateCode } from "../codes";
import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";

const source = "ISO/IEC 17025:2017, 6.4.3 to 6.4.10";

type Facts = Pick<GatePlan, "day" | "references" | "voltmeter" | "scanner" | "junctions" | "leads">;

/** The same rule as when the run was planned, asked again on the day: what was in date then may not be now. */
const problem = (
  code: GateCode,
  kind: EquipmentCandidate["kind"],
  equipment: EquipmentCandidate | null,
  day: string,
): readonly Found[] => {
  const subject = equipment?.tag ?? "";
  const found = (outcome: Found["outcome"], reason: string): Found => ({
    code,
    outcome,
    subject,
    reason,
    remedy: "",
    source,
  });
  const reason = equipmentProblem(equipment, kind, day);
  if (reason !== null) return [found("breach", reason)];
  // What the laboratory's policy only warns of.
  return (equipment?.service ?? []).map(({ message }) => found("warning", message));
};

const check = (code: GateCode, fine: string, assess: (facts: Facts) => readonly Found[]) =>
  ({ code, heading: "equipment", fine, source, assess }) as const satisfies GateCheck;

export const equipmentInDate = [
  check("reference-in-date", "Every reference is in service and in date.", ({ references, day }) =>
    references.flatMap((one) => problem("reference-in-date", "reference", one, day)),
  ),
  check("voltmeter-in-date", "The voltmeter is in service and in date.", ({ voltmeter, day }) =>
    problem("voltmeter-in-date", "voltmeter", voltmeter, day),
  ),
  check("scanner-in-date", "The scanner is in service.", ({ scanner, day }) =>
    problem("scanner-in-date", "scanner", scanner, day),
  ),
  check("junction-in-date", "Every reference junction is in service.", ({ junctions, day }) =>
    junctions.flatMap((one) => problem("junction-in-date", "junction", one, day)),
  ),
  check("lead-in-date", "Every lead of ours is in service.", ({ leads, day }) =>
    leads.flatMap((one) => problem("lead-in-date", "lead", one, day)),
  ),
] as const;
