import { z } from "zod";
import { insertEnding, loadSealKeyById, lockSealKeys } from "@/lib/data/seal-key/seal-key-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { demand, Refused } from "@/lib/domain/refusal";
import { decideRevoke } from "@/lib/domain/seal/decide-ending";
import { sealEvents } from "@/lib/domain/seal/events";
import { KeyPurpose } from "@/lib/domain/seal/key-list";
import { Reason } from "@/lib/domain/seal/reason";
import { actorIdOf } from "@/lib/domain/staff/actor";
import { defineOperation } from "../operation";

/** What the key sealed from a moment on is not to be trusted: it was lost, or somebody else could use it. */
export const revokeKey = defineOperation({
  name: "seal/revoke",
  permission: "seal.manage",
  input: z.strictObject({
    id: z.uuid(),
    reason: Reason,
    effectiveAt: z.date("Say from when, as a date and a time."),
  }),
  perform: async ({ actor, now, tx }, { id, reason, effectiveAt }) => {
    await lockSealKeys(tx);
    const key = await loadSealKeyById(tx, id);
    if (!key) throw new Refused({ code: "not-found", message: "This key is not on the list." });
    demand(decideRevoke(key, effectiveAt, now));
    await insertEnding(tx, {
      ...{ sealKeyId: id, kind: "revoked", reason, effectiveAt },
      ...{ recordedAt: now, recordedById: actorIdOf(actor) },
    });
    const { fingerprint } = key;
    const purpose = KeyPurpose.parse(key.purpose);
    const told = { fingerprint, purpose, reason, effectiveAt: effectiveAt.toISOString() };
    return { value: null, events: [eventOf(sealEvents.keyRevoked, id, told)] };
  },
});
