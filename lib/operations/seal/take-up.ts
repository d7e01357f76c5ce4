import { z } from "zod";
import {
  insertEnding,
  insertSealKey,
  loadKeysInUse,
  loadSealKey,
  lockSealKeys,
} from "@/lib/data/seal-key/seal-key-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { sealEvents } from "@/lib/domain/seal/events";
import { KeyFingerprint, KeyOrigin, KeyPurpose } from "@/lib/domain/seal/key-list";
import { defineOperation } from "../operation";

const input = z.strictObject({
  fingerprint: KeyFingerprint,
  purpose: KeyPurpose,
  origin: KeyOrigin,
  algorithm: z.string().min(1),
  subject: z.string().min(1),
  /** DER. */
  certificate: z.instanceof(Uint8Array),
  chain: z.array(z.instanceof(Uint8Array)),
  notBefore: z.date(),
  notAfter: z.date(),
});

const rotation = "Another key was taken up in its place.";

/**
 * A key is on the list before anything is sealed with it. The laboratory seals with one key at a time and has one
 * authority of its own: the one before is retired with the same act. Outside authorities change their keys by themselves.
 */
export const takeUpKey = defineOperation({
  name: "seal/take-up",
  permission: "system",
  input,
  perform: async ({ now, tx }, key) => {
    await lockSealKeys(tx);
    const { fingerprint, purpose, origin, algorithm, notAfter } = key;
    if (await loadSealKey(tx, fingerprint))
      throw new Refused({ code: "wrong-state", message: "This key is on the list already." });
    const before = origin === "authority" ? [] : await loadKeysInUse(tx, purpose);
    const replaced = before.filter((one) => one.origin !== "authority");
    const id = await insertSealKey(tx, { ...key, takenUpAt: now });
    for (const { id: sealKeyId } of replaced) {
      const when = { effectiveAt: now, recordedAt: now, recordedById: null };
      await insertEnding(tx, { sealKeyId, kind: "retired", reason: rotation, ...when });
    }
    const told = { fingerprint, purpose, origin, algorithm, notAfter: notAfter.toISOString() };
    return {
      value: { id },
      events: [
        eventOf(sealEvents.keyTakenUp, id, told),
        ...replaced.map((one) =>
          eventOf(sealEvents.keyRetired, one.id, {
            ...{ fingerprint: one.fingerprint, purpose, reason: rotation },
          }),
        ),
      ],
    };
  },
});
