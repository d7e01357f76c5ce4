import { randomUUID } from "node:crypto";
import { z } from "zod";
import { insertFactor } from "@/lib/data/account/second-factor-store";
import { accountEvents } from "@/lib/domain/account/events";
import { eventOf } from "@/lib/domain/audit/define-event";
import { longestPassword } from "@/lib/domain/staff/password";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { newSecret } from "../one-time-code";
import { defineOperation } from "../operation";
import { demandPassword } from "./demand-password";

/** A secret, which counts from its first right code. One that is in force stays in force until then. */
export const beginSecondFactor = defineOperation({
  name: "account/begin-second-factor",
  permission: "signed-in",
  input: z.strictObject({ password: z.string().max(longestPassword) }),
  perform: async ({ actor, now, tx }, { password }) => {
    const personId = personIdOf(actor);
    await demandPassword(tx, personId, password);
    await insertFactor(tx, { id: randomUUID(), personId, secret: newSecret() }, now);
    return { value: null, events: [eventOf(accountEvents.factorBegun, personId, {})] };
  },
});
