import type { AccountPolicy } from "./policy";

/** Whether the laboratory asks whoever holds these roles for a one-time code. */
export const needsSecondFactor = (held: readonly string[], policy: AccountPolicy): boolean =>
  policy.secondFactorRoles.some((role) => held.includes(role));
