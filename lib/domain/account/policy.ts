import { z } from "zod";
import { roles } from "../staff/roles";
import { rowVersion } from "../typed-text";

/**
 * How the laboratory lets people in. The figures are the platform's, common practice without a source; the laboratory
 * sets its own (NIST SP 800-63B-4 names 12 hours and 1 hour of idleness at its second level as an upper bound, from memory).
 */
export const AccountPolicy = z.strictObject({
  /** Wrong passwords or codes in a row that lock an account. */
  lockAfter: z.int().min(5).max(100).default(10),
  lockMinutes: z.int().min(1).max(1440).default(30),
  /** A full session that nobody uses ends after this. At the bench there is none. */
  idleMinutes: z.int().min(5).max(720).default(120),
  /** Whoever holds one of these gives a one-time code at each sign-in. */
  secondFactorRoles: z.array(z.enum(roles)).default([]),
});
export type AccountPolicy = z.output<typeof AccountPolicy>;

export const readAccountPolicy = (stored: string): AccountPolicy => AccountPolicy.parse(JSON.parse(stored));

export const AccountPolicyInput = z.strictObject({ version: rowVersion, policy: AccountPolicy });
