import { z } from "zod";
import { equipmentKinds } from "../equipment/types";
import { day, lines, optionalLine, requiredLine, requiredLines, rowVersion } from "../typed-text";
import { providerRoutes } from "./types";

/** Its name never changes, since certificates name it: a laboratory that changed hands is another provider. */
export const ProviderInput = z
  .strictObject({
    name: requiredLine("Write its name as on its certificates.", 200),
    route: z.enum(providerRoutes, "Choose what it is."),
    accreditation: optionalLine(120),
    accreditationBody: optionalLine(200),
    note: lines(1000).default(""),
  })
  .refine(({ route, accreditation }) => route !== "accredited" || accreditation !== "", {
    path: ["accreditation"],
    message: "Write its accreditation number: without it, it is another route.",
  })
  .refine(({ route, accreditationBody }) => route !== "accredited" || accreditationBody !== "", {
    path: ["accreditationBody"],
    message: "Write who accredited it.",
  });

export const ProviderScopeInput = z
  .array(z.strictObject({ kind: z.enum(equipmentKinds), range: optionalLine(120) }))
  .min(1, "Choose at least one kind of equipment it is approved for.");

export const ApproveProviderInput = z
  .strictObject({
    id: z.uuid(),
    version: rowVersion,
    approvedFrom: day,
    approvedUntil: day,
    scope: ProviderScopeInput,
    note: requiredLines("Write what the approval rests on: what was looked at, and when.", 1000),
  })
  .refine(({ approvedFrom, approvedUntil }) => approvedFrom <= approvedUntil, {
    path: ["approvedUntil"],
    message: "The last day comes after the first.",
  });

export const SuspendProviderInput = z.strictObject({
  id: z.uuid(),
  version: rowVersion,
  reason: requiredLine("Say why: from now on its certificates cannot be chosen.", 400),
});
