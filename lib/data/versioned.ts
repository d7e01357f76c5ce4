import { Refused } from "@/lib/domain/refusal";

/**
 * For a save of the form `updateMany({ where: { id, version }, data: { …, version: { increment: 1 } } })`: no row
 * means that somebody saved in between (or that the row is not this actor's to see).
 */
export const demandSaved = (saved: { readonly count: number }): void => {
  if (saved.count === 0)
    throw new Refused({
      code: "changed-meanwhile",
      message:
        "Somebody else changed this since you opened it. Nothing was stored; reload to see what it says now.",
    });
};
