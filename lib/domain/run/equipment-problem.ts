import { outOfService, type ServiceGround } from "../equipment/service-problem";
import type { EquipmentCandidate } from "./load-candidates";

/** Why a thing cannot be chosen for a run; where its certificate does not reach is `reference-range` of the gate. */
export type UseGround =
  | "not-recorded"
  | ServiceGround
  | "not-accepted"
  | "never-calibrated"
  | "not-in-date"
  | "issuer-not-approved";

export type UseProblem = { readonly ground: UseGround; readonly message: string };

/** These may stand without a certificate: what they add to the budget is what the laboratory itself found. */
const mayStandWithout = new Set<EquipmentCandidate["kind"]>(["scanner", "junction", "lead"]);

const problem = (ground: UseGround, message: string): UseProblem => ({ ground, message });

const uncalibrated = ({ tag, kind, waiting }: EquipmentCandidate, day: string): UseProblem | null => {
  if (mayStandWithout.has(kind)) return null;
  return waiting === null
    ? problem(
        "never-calibrated",
        `${tag} has no calibration on ${day}. Record its certificate under Standards, or choose another.`,
      )
    : problem(
        "not-accepted",
        `Certificate ${waiting} of ${tag} waits for acceptance. Have a second person accept it under Standards, or choose another.`,
      );
};

/** Why a piece of equipment cannot be used on a day, or null: one rule for the screen, the operation and the gate. */
export const problemOfUse = (
  equipment: EquipmentCandidate | null,
  kind: EquipmentCandidate["kind"],
  day: string,
): UseProblem | null => {
  if (!equipment || equipment.kind !== kind)
    return problem("not-recorded", `Choose a ${kind} that is recorded under Standards.`);
  const { tag, calibration } = equipment;
  const against = outOfService(equipment) ?? equipment.service.find(({ blocks }) => blocks);
  if (against) return problem(against.ground, against.message);
  if (!calibration) return uncalibrated(equipment, day);
  const { certificate, dueOn, issuer, isIssuerApproved, isRejected } = calibration;
  if (isRejected)
    return problem(
      "not-accepted",
      `Certificate ${certificate} of ${tag} has been rejected since. Choose another, and plan the run anew.`,
    );
  if (dueOn < day)
    return problem(
      "not-in-date",
      `The calibration of ${tag} was due on ${dueOn}. Record its new certificate, or choose another.`,
    );
  if (!isIssuerApproved)
    return problem(
      "issuer-not-approved",
      `${issuer}, who issued certificate ${certificate} of ${tag}, is not approved for it. Approve the issuer under Providers, or choose another.`,
    );
  return null;
};

/** The same as one sentence. */
export const equipmentProblem = (...asked: Parameters<typeof problemOfUse>): string | null =>
  problemOfUse(...asked)?.message ?? null;
