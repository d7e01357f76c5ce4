import { z } from "zod";
import { rowVersion } from "../typed-text";

/**
 * How long a session of signing lasts. That further signatures of one continuous session need one of the two components
 * is 21 CFR 11.200(a)(1)(i), borrowed: ISO/IEC 17025 does not ask for it. The figures are common practice, no source.
 */
export const SigningPolicy = z.strictObject({
  /** Since the last signature; afterwards both are asked for again. */
  windowMinutes: z.int("A whole number of minutes.").min(1).max(60).default(15),
  /** However busy it was. */
  longestHours: z.int("A whole number of hours.").min(1).max(12).default(8),
});
export type SigningPolicy = z.output<typeof SigningPolicy>;

export const readSigningPolicy = (stored: string): SigningPolicy => SigningPolicy.parse(JSON.parse(stored));

export const SigningPolicyInput = z.strictObject({ version: rowVersion, policy: SigningPolicy });
