import { openHoldIds } from "@/lib/data/sql/open-holds";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "../view";
import { describeHolds } from "./holds";

export const holdsOnPage = 50;
export const holdFilters = ["all", "waiting", "answered", "not-asked"] as const;
export type HoldFilter = (typeof holdFilters)[number];

/** Everything that stands still in the laboratory, the longest first; and what it waits for. */
export const openHoldsView = (actor: Actor, asked: { readonly filter: HoldFilter; readonly page: number }) =>
  answer(actor, "laboratory.read", async (tx) => {
    const rows = await openHoldIds(tx, asked.filter, {
      limit: holdsOnPage,
      offset: (asked.page - 1) * holdsOnPage,
    });
    const holds = await tx.hold.findMany({
      where: { id: { in: rows.map(({ id }) => id) } },
      orderBy: [{ placedAt: "asc" }, { id: "asc" }],
    });
    return { holds: await describeHolds(tx, holds), count: rows[0]?.count ?? 0, ...asked };
  });
