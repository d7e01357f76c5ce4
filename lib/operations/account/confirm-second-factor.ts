import { z } from "zod";
import {
  confirmFactor,
  endFactorsBut,
  insertRecoveryCodes,
  loadBegunFactor,
} from "@/lib/data/account/second-factor-store";
import { loadPasswordHash } from "@/lib/data/staff/sign-in-store";
import { accountEvents } from "@/lib/domain/account/events";
import { PublicUrl } from "@/lib/domain/account/schema";
import { factorSetUpMilliseconds } from "@/lib/domain/account/second-factor";
import { eventOf } from "@/lib/domain/audit/define-event";
import { factorNotice } from "@/lib/domain/mail/letters/account-notice";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { newRecoveryCode, recoveryHash, stepOfCode } from "../one-time-code";
import { defineOperation } from "../operation";
import { tellOwner } from "./tell-owner";

const recoveryCodes = 10;

/** The first right code shows that the authenticator holds the secret. Answers the recovery codes, this once. */
export const confirmSecondFactor = defineOperation({
  name: "account/confirm-second-factor",
  permission: "signed-in",
  input: z.strictObject({ code: z.string().max(60), publicUrl: PublicUrl }),
  perform: async ({ actor, now, tx }, { code, publicUrl }) => {
    const personId = personIdOf(actor);
    const begun = await loadBegunFactor(tx, personId, new Date(now.getTime() - factorSetUpMilliseconds));
    const owner = await loadPasswordHash(tx, personId);
    if (!begun || !owner)
      throw new Refused({
        code: "wrong-state",
        message: "The set-up was begun too long ago. Nothing was changed; begin again.",
      });
    const step = stepOfCode(begun.secret, code, now);
    if (step === null)
      throw new Refused({
        code: "invalid",
        message: "Nothing was changed yet.",
        fields: {
          code: "This code does not fit: type the one that is shown now, and look at the telephone’s clock.",
        },
      });
    await endFactorsBut(tx, personId, begun.id, now);
    if (!(await confirmFactor(tx, begun.id, step, now)))
      throw new Refused({ code: "wrong-state", message: "These codes are set up already." });
    const codes = Array.from({ length: recoveryCodes }, newRecoveryCode);
    await insertRecoveryCodes(tx, begun.id, codes.map(recoveryHash));
    const letter = factorNotice({ name: owner.name, publicUrl, change: "set-up" });
    await tellOwner(tx, { id: personId, email: owner.email }, letter, publicUrl, now);
    return { value: codes, events: [eventOf(accountEvents.factorConfirmed, personId, {})] };
  },
});
