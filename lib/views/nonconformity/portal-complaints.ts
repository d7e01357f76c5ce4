import type { NonconformityState } from "@/lib/domain/nonconformity/labels";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer } from "../view";

/** A customer's own complaints with what the laboratory told them; the rest of the story is not shown to them by the database. */
export const portalComplaintsView = (actor: Actor) =>
  answer(actor, "portal.read", async (tx) => {
    const rows = await tx.nonconformity.findMany({
      where: { kind: "complaint" },
      orderBy: { openedAt: "desc" },
      include: { entries: { orderBy: { id: "asc" } } },
      take: 100,
    });
    return {
      mayComplain: actor.kind === "customer" && may(actor.roles, "portal.order"),
      complaints: rows.map((row) => ({
        number: row.number,
        state: row.state as NonconformityState,
        title: row.title,
        description: row.description,
        subjectName: row.subjectName,
        openedAt: row.openedAt.toISOString(),
        told: row.entries.map(({ text, saidAt }) => ({ text, saidAt: saidAt.toISOString() })),
      })),
    };
  });
