import { z } from "zod";
import { deleteOutsideOf, insertOutside, loadOutsidePerson } from "@/lib/data/account/outside-store";
import { lockName } from "@/lib/data/sql/lock-name";
import { accountEvents } from "@/lib/domain/account/events";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { longestPassword } from "@/lib/domain/staff/password";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";
import { demandPassword } from "./demand-password";

const password = z.strictObject({ password: z.string().max(longestPassword) });

/** The password once more before somebody is sent to the outside provider to be linked. */
export const askOutsideLink = defineOperation({
  name: "account/ask-outside-link",
  permission: "signed-in",
  input: password,
  perform: async ({ actor, tx }, input) => {
    const personId = personIdOf(actor);
    await demandPassword(tx, personId, input.password);
    return { value: { personId }, events: [eventOf(accountEvents.outsideAsked, personId, {})] };
  },
});

/** Whom the provider vouched for, and who asked in this session, are one person from now on. */
export const linkOutside = defineOperation({
  name: "account/link-outside",
  permission: "signed-in",
  input: z.strictObject({ issuer: z.url(), subject: z.string().min(1).max(255) }),
  perform: async ({ actor, now, tx }, key) => {
    const personId = personIdOf(actor);
    await lockName(tx, `outside ${key.issuer} ${key.subject}`);
    const holder = await loadOutsidePerson(tx, key);
    if (holder)
      throw new Refused({
        code: "rule",
        message:
          holder.id === personId
            ? "Your account is linked with this person already."
            : "That person of the provider opens another account here. Nothing was changed.",
      });
    await insertOutside(tx, personId, key, now);
    return { value: null, events: [eventOf(accountEvents.outsideLinked, personId, {})] };
  },
});

export const unlinkOutside = defineOperation({
  name: "account/unlink-outside",
  permission: "signed-in",
  input: password,
  perform: async ({ actor, tx }, input) => {
    const personId = personIdOf(actor);
    await demandPassword(tx, personId, input.password);
    if ((await deleteOutsideOf(tx, personId)) === 0)
      throw new Refused({ code: "wrong-state", message: "Your account is not linked. Nothing was changed." });
    return { value: null, events: [eventOf(accountEvents.outsideUnlinked, personId, {})] };
  },
});
