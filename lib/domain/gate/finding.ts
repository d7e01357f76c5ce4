import type { GateCode } from "./codes";
import type { GateHeading } from "./headings";
import type { GatePlan } from "./plan";
import type { GatePolicy } from "./policy";

/** What the text says where a rule of the trade stands in no publication we know. */
export const commonPractice = "common practice, no source";
export const laboratoryPolicy = "laboratory policy, no source";

/**
 * What a check says of one subject. `breach`: the run must not start so; whether a reason may set it aside is the
 * policy's to say, not the check's. The reason never names its subject, so that one reason can stand for many sensors.
 */
export type Found = {
  readonly code: GateCode;
  readonly outcome: "breach" | "warning";
  /** Tag of a sensor, a reference or equipment, or a channel; empty = the whole run. */
  readonly subject: string;
  readonly reason: string;
  readonly remedy: string;
  readonly source: string;
  /** Row of the load it speaks of, from nought, where a form shows it there. */
  readonly at?: number;
};

/** One rule of the gate. Silence means it is met, and `fine` says so in words. */
export type GateCheck = {
  readonly code: GateCode;
  readonly heading: GateHeading;
  readonly fine: string;
  readonly source: string;
  readonly assess: (plan: GatePlan, policy: GatePolicy) => readonly Found[];
};
