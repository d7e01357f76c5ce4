import { takeLink, withdrawLinksTo } from "@/lib/data/account/access-link-store";
import { loadPerson, saveLock, savePasswordHash } from "@/lib/data/staff/person-store";
import { insertAttempt } from "@/lib/data/staff/sign-in-store";
import { accountEvents } from "@/lib/domain/account/events";
import { ChosenAgain } from "@/lib/domain/account/schema";
import { eventOf } from "@/lib/domain/audit/define-event";
import { passwordNotice } from "@/lib/domain/mail/letters/account-notice";
import { Refused } from "@/lib/domain/refusal";
import { namesItsOwner } from "@/lib/domain/staff/password";
import { defineOperation } from "../operation";
import { hashPassword } from "../password-hash";
import { tellOwner } from "./tell-owner";

/**
 * The link stands in for the forgotten password and for nothing else: a one-time code is asked for at the next sign-in
 * as before. Every session ends, a lock opens, and the owner is told.
 */
export const setPasswordByLink = defineOperation({
  name: "account/set-password-by-link",
  permission: "system",
  input: ChosenAgain,
  perform: async ({ now, tx }, { token, password, publicUrl }) => {
    const link = await takeLink(tx, "reset", token, now);
    const person = link?.personId ? await loadPerson(tx, link.personId) : null;
    if (!person?.active || person.email !== link?.email)
      throw new Refused({
        code: "wrong-state",
        message: "This link opens nothing any more: it was used, a later one was sent, or its hour is over.",
      });
    if (namesItsOwner(password, person.email))
      throw new Refused({
        code: "invalid",
        message: "Your password is as it was.",
        fields: { password: "It says whose it is: choose one without the e-mail address." },
      });
    await savePasswordHash(tx, person.id, await hashPassword(password), now);
    await saveLock(tx, person.id, null);
    await insertAttempt(tx, person.email, true, now);
    await withdrawLinksTo(tx, "reset", person.email, now);
    await tellOwner(tx, person, passwordNotice({ name: person.name, publicUrl }), publicUrl, now);
    return { value: null, events: [eventOf(accountEvents.passwordReset, person.id, {})] };
  },
});
