import type { NonconformityKind, NonconformityState, SubjectKind } from "@/lib/domain/nonconformity/labels";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer } from "../view";

export const nonconformitiesOnPage = 50;

type Asked = {
  /** "not-closed": whatever is still to be done. */
  readonly state: NonconformityState | "not-closed" | "all";
  readonly kind: NonconformityKind | "all";
  readonly page: number;
};

/** Nonconforming work and complaints, the newest first. */
export const nonconformitiesView = (actor: Actor, asked: Asked) =>
  answer(actor, "laboratory.read", async (tx) => {
    const where = {
      ...(asked.state === "all"
        ? {}
        : { state: asked.state === "not-closed" ? { not: "closed" } : asked.state }),
      ...(asked.kind === "all" ? {} : { kind: asked.kind }),
    };
    const count = await tx.nonconformity.count({ where });
    const rows = await tx.nonconformity.findMany({
      where,
      orderBy: [{ openedAt: "desc" }, { number: "desc" }],
      take: nonconformitiesOnPage,
      skip: (asked.page - 1) * nonconformitiesOnPage,
    });
    return {
      ...asked,
      count,
      mayOpen: actor.kind === "staff" && may(actor.roles, "nonconformity.open"),
      rows: rows.map((row) => ({
        number: row.number,
        kind: row.kind as NonconformityKind,
        state: row.state as NonconformityState,
        title: row.title,
        subjectKind: row.subjectKind as SubjectKind,
        subjectName: row.subjectName,
        openedAt: row.openedAt.toISOString(),
      })),
    };
  });
