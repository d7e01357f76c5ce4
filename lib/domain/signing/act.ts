import { z } from "zod";
import { longestPassword } from "../staff/password";

/** What signs: made when the form was shown, and typed now. Nothing of it but the act's name is kept. */
export const SigningAct = z.strictObject({
  actId: z.uuid("Reload the page and sign again."),
  password: z.string().max(longestPassword),
  code: z.string().trim().max(60),
});
export type SigningAct = z.output<typeof SigningAct>;
