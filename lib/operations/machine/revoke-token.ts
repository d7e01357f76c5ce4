import { z } from "zod";
import type { Tx } from "@/lib/data/in-scope";
import { loadToken, revoke } from "@/lib/data/machine/token-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { machineEvents } from "@/lib/domain/machine/events";
import { Refused } from "@/lib/domain/refusal";
import { demandOwn } from "@/lib/domain/staff/demand-own";
import { defineOperation } from "../operation";

const input = z.strictObject({ id: z.uuid() });

const end = async (tx: Tx, now: Date, token: Awaited<ReturnType<typeof loadToken>>) => {
  if (!token) throw new Refused({ code: "not-found", message: "This token is not here." });
  if (token.revokedAt) throw new Refused({ code: "wrong-state", message: "This token was revoked before." });
  await revoke(tx, token.id, now);
  const { name, beginning } = token;
  return {
    value: null,
    events: [eventOf(machineEvents.tokenRevoked, token.id, { name, beginning })] as const,
  };
};

export const revokeToken = defineOperation({
  name: "machine/revoke-token",
  permission: "portal.manage",
  scope: "laboratory",
  input,
  perform: async ({ actor, now, tx }, { id }) => {
    const token = await loadToken(tx, id);
    demandOwn(actor, token?.customerId);
    return end(tx, now, token);
  },
});

/** Any token, a customer's too: whoever answers for the platform may close a door that stands open. */
export const revokeAnyToken = defineOperation({
  name: "machine/revoke-any-token",
  permission: "laboratory.configure",
  input,
  perform: async ({ now, tx }, { id }) => end(tx, now, await loadToken(tx, id)),
});
