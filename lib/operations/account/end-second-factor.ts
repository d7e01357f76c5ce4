import { z } from "zod";
import {
  endFactors,
  loadSecondFactor,
  takeRecoveryCode,
  takeStep,
} from "@/lib/data/account/second-factor-store";
import { accountEvents } from "@/lib/domain/account/events";
import { PublicUrl } from "@/lib/domain/account/schema";
import { eventOf } from "@/lib/domain/audit/define-event";
import { factorNotice } from "@/lib/domain/mail/letters/account-notice";
import { Refused } from "@/lib/domain/refusal";
import { longestPassword } from "@/lib/domain/staff/password";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { recoveryHash, stepOfCode } from "../one-time-code";
import { defineOperation } from "../operation";
import { demandPassword } from "./demand-password";
import { tellOwner } from "./tell-owner";

/** Gives one-time codes up: with the password and with a code, so that neither a found telephone nor a found password does. */
export const endSecondFactor = defineOperation({
  name: "account/end-second-factor",
  permission: "signed-in",
  input: z.strictObject({
    password: z.string().max(longestPassword),
    code: z.string().max(60),
    publicUrl: PublicUrl,
  }),
  perform: async ({ actor, now, tx }, { password, code, publicUrl }) => {
    const personId = personIdOf(actor);
    const owner = await demandPassword(tx, personId, password);
    const factor = await loadSecondFactor(tx, personId);
    if (!factor) throw new Refused({ code: "wrong-state", message: "No one-time codes are set up." });
    const step = stepOfCode(factor.secret, code, now);
    const isRight =
      step === null
        ? await takeRecoveryCode(tx, factor.id, recoveryHash(code), now)
        : await takeStep(tx, factor.id, step);
    if (!isRight)
      throw new Refused({
        code: "invalid",
        message: "Nothing was changed.",
        fields: { code: "This code does not fit, or was used already: type the next one." },
      });
    await endFactors(tx, personId, now);
    const letter = factorNotice({ name: owner.name, publicUrl, change: "ended" });
    await tellOwner(tx, { id: personId, email: owner.email }, letter, publicUrl, now);
    return { value: null, events: [eventOf(accountEvents.factorEnded, personId, {})] };
  },
});
