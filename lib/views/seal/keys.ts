import { loadSealKeys } from "@/lib/data/seal-key/seal-key-store";
import { endingThatCounts } from "@/lib/domain/seal/ending";
import { keyState } from "@/lib/domain/seal/key-state";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "../view";

const purposes: Readonly<Record<string, string>> = {
  seal: "Seals certificates",
  timestamp: "Tells the time",
};

const origins: Readonly<Record<string, string>> = {
  "self-issued": "self-issued",
  file: "from the site’s file",
  authority: "an outside authority’s",
};

/** The laboratory's keys, the last taken up first: how each stands, and what can still be done with it. */
export const sealKeysPageView = (actor: Actor, now: Date) =>
  answer(actor, "seal.manage", async (tx) => {
    const keys = (await loadSealKeys(tx)).toReversed().map((key) => {
      const ending = endingThatCounts(key.endings);
      return {
        ...{ id: key.id, fingerprint: key.fingerprint, algorithm: key.algorithm, subject: key.subject },
        ...{ purpose: key.purpose, origin: key.origin },
        does: purposes[key.purpose] ?? key.purpose,
        from: origins[key.origin] ?? key.origin,
        notBefore: key.notBefore.toISOString(),
        notAfter: key.notAfter.toISOString(),
        takenUpAt: key.takenUpAt.toISOString(),
        state: keyState(key, now),
        reason: ending?.reason ?? "",
        // An outside authority retires its keys by itself; that one is not to be trusted, the laboratory may say.
        mayRetire: key.endings.length === 0 && key.origin !== "authority",
        mayRevoke: !key.endings.some(({ kind }) => kind === "revoked"),
      };
    });
    const inUse = keys.find(
      ({ purpose, state }) => purpose === "seal" && (state.kind === "in-force" || state.kind === "ends-soon"),
    );
    // What seals stands before what tells the time.
    return { keys: keys.toSorted((a, b) => a.purpose.localeCompare(b.purpose)), inUse: inUse ?? null };
  });

export type SealKeysPage = Awaited<ReturnType<typeof sealKeysPageView>>;
export type SealKeyRow = SealKeysPage["keys"][number];
