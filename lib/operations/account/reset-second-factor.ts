import { z } from "zod";
import { endFactors } from "@/lib/data/account/second-factor-store";
import { loadPerson, savePerson } from "@/lib/data/staff/person-store";
import { accountEvents } from "@/lib/domain/account/events";
import { PublicUrl } from "@/lib/domain/account/schema";
import { eventOf } from "@/lib/domain/audit/define-event";
import { factorNotice } from "@/lib/domain/mail/letters/account-notice";
import { Refused } from "@/lib/domain/refusal";
import { requiredLine } from "@/lib/domain/typed-text";
import { defineOperation } from "../operation";
import { tellOwner } from "./tell-owner";

/** For whoever lost device and recovery codes. Their sessions end, and they are told: a reset nobody asked for shows. */
export const resetSecondFactor = defineOperation({
  name: "account/reset-second-factor",
  permission: "person.manage",
  input: z.strictObject({
    personId: z.uuid(),
    reason: requiredLine("Write how you made sure who asked, without a name.", 300),
    publicUrl: PublicUrl,
  }),
  perform: async ({ actor, now, tx }, { personId, reason, publicUrl }) => {
    const person = await loadPerson(tx, personId);
    if (!person) throw new Refused({ code: "not-found", message: "This person is not here." });
    if (actor.kind !== "system" && actor.personId === personId)
      throw new Refused({
        code: "rule",
        message: "Your own codes are given up at your account, with a code. Nothing was changed.",
      });
    if ((await endFactors(tx, personId, now)) === 0)
      throw new Refused({ code: "wrong-state", message: "This person has no one-time codes." });
    await savePerson(tx, personId, person.version, {}, now);
    const letter = factorNotice({ name: person.name, publicUrl, change: "reset" });
    await tellOwner(tx, person, letter, publicUrl, now);
    return { value: { id: personId }, events: [eventOf(accountEvents.factorReset, personId, { reason })] };
  },
});
