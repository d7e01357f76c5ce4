import { createHash, randomBytes } from "node:crypto";
import type { z } from "zod";
import type { Tx } from "@/lib/data/in-scope";
import { insertToken } from "@/lib/data/machine/token-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { machineEvents } from "@/lib/domain/machine/events";
import { tokenPrefix } from "@/lib/domain/machine/program";
import { MakeTokenInput } from "@/lib/domain/machine/schema";
import { Refused } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** SHA-256 of a token: what is stored of it. 256 random bits need no slower hash. */
export const hashOfToken = (token: string): string => createHash("sha256").update(token).digest("hex");

const make = async (
  tx: Tx,
  actor: Actor,
  now: Date,
  customerId: string | null,
  input: z.output<typeof MakeTokenInput>,
) => {
  const token = `${tokenPrefix}${randomBytes(32).toString("base64url")}`;
  const { name, scopes } = input;
  const beginning = token.slice(0, 10);
  const expiresAt = new Date(now.getTime() + input.days * 86_400_000);
  const id = await insertToken(tx, {
    ...{ tokenHash: hashOfToken(token), beginning, name, customerId, scopes },
    ...{ madeById: personIdOf(actor), madeAt: now, expiresAt },
  });
  const told = { name, beginning, scopes, customerId, expiresAt: expiresAt.toISOString() };
  // The token itself is shown this once and stored nowhere.
  return { value: { id, token }, events: [eventOf(machineEvents.tokenMade, id, told)] as const };
};

/** A token for a customer's own program. */
export const makeToken = defineOperation({
  name: "machine/make-token",
  permission: "portal.manage",
  scope: "laboratory",
  input: MakeTokenInput,
  perform: async ({ actor, now, tx }, input) => {
    if (actor.kind !== "customer")
      throw new Refused({ code: "not-permitted", message: "Somebody of the customer makes this." });
    return make(tx, actor, now, actor.customerId, input);
  },
});

/** A token for a program of the laboratory's: reads what the laboratory reads, and asks for no work. */
export const makeLaboratoryToken = defineOperation({
  name: "machine/make-laboratory-token",
  permission: "laboratory.configure",
  input: MakeTokenInput,
  perform: async ({ actor, now, tx }, input) => {
    if (input.scopes.includes("orders:write"))
      throw new Refused({
        code: "rule",
        message: "Nothing was stored.",
        fields: { scopes: "Work is requested by a customer's program, with a token the customer made." },
      });
    return make(tx, actor, now, null, input);
  },
});
