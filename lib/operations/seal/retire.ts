import { z } from "zod";
import { insertEnding, loadSealKeyById, lockSealKeys } from "@/lib/data/seal-key/seal-key-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { demand, Refused } from "@/lib/domain/refusal";
import { decideRetire } from "@/lib/domain/seal/decide-ending";
import { sealEvents } from "@/lib/domain/seal/events";
import { KeyPurpose } from "@/lib/domain/seal/key-list";
import { Reason } from "@/lib/domain/seal/reason";
import { actorIdOf } from "@/lib/domain/staff/actor";
import { defineOperation } from "../operation";

/** The key seals no more from now on; what it sealed stays good. */
export const retireKey = defineOperation({
  name: "seal/retire",
  permission: "seal.manage",
  input: z.strictObject({ id: z.uuid(), reason: Reason }),
  perform: async ({ actor, now, tx }, { id, reason }) => {
    await lockSealKeys(tx);
    const key = await loadSealKeyById(tx, id);
    if (!key) throw new Refused({ code: "not-found", message: "This key is not on the list." });
    demand(decideRetire(key));
    await insertEnding(tx, {
      ...{ sealKeyId: id, kind: "retired", reason },
      ...{ effectiveAt: now, recordedAt: now, recordedById: actorIdOf(actor) },
    });
    const { fingerprint } = key;
    const purpose = KeyPurpose.parse(key.purpose);
    return { value: null, events: [eventOf(sealEvents.keyRetired, id, { fingerprint, purpose, reason })] };
  },
});
