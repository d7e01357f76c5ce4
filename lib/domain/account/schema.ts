import { z } from "zod";
import { longestPassword, NewPassword } from "../staff/password";
import { customerRoles } from "../staff/roles";
import { staffRoles } from "../staff/schema";
import { emailAddress, requiredLine } from "../typed-text";

export const invitationHours = 72;
export const resetMinutes = 60;

/** 32 random bytes, base64url. */
export const AccessToken = z.string().regex(/^[\w-]{43}$/, "This link is not whole: open it from the mail.");
export const PublicUrl = z.url({ protocol: /^https?$/ });

const name = requiredLine("Write the person's name.", 120);
const unique = <T extends string>(held: readonly T[]): T[] => [...new Set(held)].toSorted();

/** By the laboratory: somebody of its own with roles, or somebody of a customer with those of a customer. */
export const Invitation = z
  .strictObject({
    name,
    email: emailAddress,
    roles: z.array(z.enum(staffRoles)).transform(unique),
    customerId: z.uuid("Choose the customer from the list.").nullable(),
    publicUrl: PublicUrl,
  })
  .refine((person) => person.customerId !== null || person.roles.length > 0, {
    path: ["roles"],
    message: "Choose at least one role.",
  })
  .refine((person) => person.customerId === null || person.roles.length === 0, {
    path: ["roles"],
    message: "People of a customer hold no role of the laboratory.",
  });

/** By somebody of a customer, for the same customer. Reading is part of it. */
export const ColleagueInvitation = z.strictObject({
  name,
  email: emailAddress,
  roles: z.array(z.enum(customerRoles)).transform((held) => unique(["customer", ...held] as const)),
  publicUrl: PublicUrl,
});

/** Twice, because nobody sees what they type. */
const chosenPassword = { password: NewPassword, passwordAgain: z.string().max(longestPassword) };
const same = (input: { readonly password: string; readonly passwordAgain: string }) =>
  input.password === input.passwordAgain;
const differs = { path: ["passwordAgain"], message: "The two are not the same." };

export const AcceptedInvitation = z
  .strictObject({ token: AccessToken, name, ...chosenPassword })
  .refine(same, differs);

export const ChosenAgain = z
  .strictObject({ token: AccessToken, publicUrl: PublicUrl, ...chosenPassword })
  .refine(same, differs);
