import { z } from "zod";
import { emailAddress, requiredLine, rowVersion } from "../typed-text";
import { NewPassword } from "./password";

export const staffRoles = ["front-desk", "technician", "signatory", "quality-manager"] as const;

const name = requiredLine("Write the person's name as it stands on certificates.", 120);
const heldRoles = z.array(z.enum(staffRoles)).transform((held) => [...new Set(held)].toSorted());

/** Somebody of the laboratory has roles, somebody of a customer has that customer; nobody is both. */
export const PersonInput = z
  .strictObject({
    name,
    email: emailAddress,
    roles: heldRoles,
    customerId: z.uuid("Choose the customer from the list.").nullable(),
    password: NewPassword,
  })
  .refine((person) => person.customerId !== null || person.roles.length > 0, {
    path: ["roles"],
    message: "Choose at least one role.",
  })
  .refine((person) => person.customerId === null || person.roles.length === 0, {
    path: ["roles"],
    message: "People of a customer hold no role of the laboratory.",
  });

export const PersonChange = z.strictObject({
  id: z.uuid(),
  version: rowVersion,
  name,
  email: emailAddress,
  roles: heldRoles,
});
