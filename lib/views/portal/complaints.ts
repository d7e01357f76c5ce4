import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "../view";

/** The customer's own complaints and what the laboratory told about them; row-level security shows no more of it. */
export const portalComplaintsView = (actor: Actor) =>
  answer(actor, "portal.read", async (tx) => {
    const rows = await tx.nonconformity.findMany({
      orderBy: { number: "desc" },
      include: { entries: { orderBy: { id: "asc" } } },
    });
    return rows.map(({ number, state, title, description, subjectName, openedAt, entries }) => ({
      ...{ number, title, description, about: subjectName, openedAt: openedAt.toISOString() },
      isClosed: state === "closed",
      told: entries.map(({ text, saidAt }) => ({ text, at: saidAt.toISOString() })),
    }));
  });

export type PortalComplaint = Awaited<ReturnType<typeof portalComplaintsView>>[number];
