import type { NonconformityState, SubjectKind } from "@/lib/domain/nonconformity/labels";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer } from "../view";

/** What was reported of one thing, for the line on its own page; by its name as it stands there. */
export const nonconformitiesOnView = (actor: Actor, kind: SubjectKind, name: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const rows = await tx.nonconformity.findMany({
      where: { subjectKind: kind, subjectName: name },
      orderBy: { openedAt: "desc" },
      select: { number: true, state: true, title: true },
      take: 20,
    });
    return {
      mayOpen: actor.kind === "staff" && may(actor.roles, "nonconformity.open"),
      rows: rows.map((row) => ({ ...row, state: row.state as NonconformityState })),
    };
  });
