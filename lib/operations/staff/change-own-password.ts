import { z } from "zod";
import { savePasswordHash } from "@/lib/data/staff/person-store";
import { loadPasswordHash } from "@/lib/data/staff/sign-in-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { staffEvents } from "@/lib/domain/staff/events";
import { longestPassword, NewPassword, namesItsOwner } from "@/lib/domain/staff/password";
import { defineOperation } from "../operation";
import { hashPassword, verifyPassword } from "../password-hash";

const refusedAt = (field: string, message: string): Refused =>
  new Refused({ code: "invalid", message: "Your password is as it was.", fields: { [field]: message } });

/** Asks for the old one again: a screen left open is not enough. Ends every session, this one included. */
export const changeOwnPassword = defineOperation({
  name: "staff/change-own-password",
  permission: "signed-in",
  input: z
    .strictObject({
      oldPassword: z.string().max(longestPassword),
      password: NewPassword,
      passwordAgain: z.string(),
    })
    .refine((input) => input.password === input.passwordAgain, {
      path: ["passwordAgain"],
      message: "The two are not the same.",
    }),
  perform: async ({ actor, now, tx }, { oldPassword, password }) => {
    if (actor.kind === "system")
      throw new Refused({ code: "not-permitted", message: "The platform has no password." });
    const stored = await loadPasswordHash(tx, actor.personId);
    if (!stored) throw new Refused({ code: "not-found", message: "This person is not here." });
    if (!(await verifyPassword(stored.passwordHash, oldPassword)))
      throw refusedAt("oldPassword", "This is not your present password.");
    if (namesItsOwner(password, stored.email))
      throw refusedAt("password", "It says whose it is: choose one without the e-mail address.");
    await savePasswordHash(tx, actor.personId, await hashPassword(password), now);
    return { value: null, events: [eventOf(staffEvents.passwordChanged, actor.personId, {})] };
  },
});
