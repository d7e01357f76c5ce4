import { loadAllRevisions } from "@/lib/data/procedure/procedure-store";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer } from "./view";

/** Every procedure with the revision that runs follow now, and the one that is being written. */
export const proceduresView = (actor: Actor) =>
  answer(actor, "laboratory.read", async (tx) => {
    const revisions = await loadAllRevisions(tx);
    return {
      mayDraft: actor.kind === "staff" && may(actor.roles, "procedure.draft"),
      procedures: [...new Map(revisions.map((one) => [one.key, one.title]))].map(([key, title]) => {
        const own = revisions.filter((one) => one.key === key);
        const current = own.find(({ state }) => state === "current");
        return {
          key,
          title,
          current: current ? { revision: current.revision, from: current.currentFrom ?? "" } : null,
          draft: own.find(({ state }) => state === "draft")?.revision ?? null,
        };
      }),
    };
  });

export type ProceduresView = Awaited<ReturnType<typeof proceduresView>>;
