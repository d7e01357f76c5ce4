import { z } from "zod";

const answers = ["block", "warn"] as const;
const answer = z.enum(answers, "Choose what follows.").default("block");

/**
 * What follows where equipment in service has something against it: it cannot be chosen, or whoever chooses it is warned.
 * The laboratory's own rule; suspect equipment is no matter of policy, it cannot be chosen.
 */
export const ServicePolicy = z.strictObject({
  /** An intermediate check is overdue, ISO/IEC 17025 6.4.10. */
  overdueCheck: answer,
  /** Planned maintenance is overdue, 6.4.3. */
  overdueMaintenance: answer,
  /** The last check breaks a rule of its chart, 7.7.1. */
  chartBreach: answer,
  /** A reference was annealed and no check has passed since. */
  uncheckedAnneal: answer,
});
export type ServicePolicy = z.output<typeof ServicePolicy>;

export const servicePolicyKeys = Object.keys(ServicePolicy.shape) as readonly (keyof ServicePolicy)[];

export const readServicePolicy = (stored: string): ServicePolicy => ServicePolicy.parse(JSON.parse(stored));
