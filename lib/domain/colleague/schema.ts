import { z } from "zod";
import { customerRoles } from "../staff/roles";
import { rowVersion } from "../typed-text";

/** Whoever may sign in reads; the further rights are ticked. */
const further = z
  .array(z.enum(["customer-orderer", "customer-manager"]))
  .transform((ticked) => customerRoles.filter((role) => role === "customer" || ticked.includes(role)));

export const ColleagueRolesInput = z.strictObject({ id: z.uuid(), version: rowVersion, roles: further });

export const ColleagueActiveInput = z.strictObject({
  id: z.uuid(),
  version: rowVersion,
  active: z.boolean(),
});
