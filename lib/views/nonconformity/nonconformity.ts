import { demandStory } from "@/lib/data/nonconformity/load-story";
import { signedSince } from "@/lib/data/nonconformity/signed-since";
import { loadWorkToHold } from "@/lib/data/nonconformity/work-to-hold";
import { loadPeopleNames } from "@/lib/data/review/load-people-names";
import { isInvolved } from "@/lib/domain/nonconformity/decide-entry";
import { readFigures } from "@/lib/domain/nonconformity/figures";
import type { EntryKind, NonconformityKind, NonconformityState } from "@/lib/domain/nonconformity/labels";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { describeHolds } from "../hold/holds";
import { answer, found } from "../view";

/** One nonconformity with its story, what stands still for it, and what this person may do next. */
export const nonconformityView = (actor: Actor, number: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const { version } = found(
      await tx.nonconformity.findUnique({ where: { number }, select: { version: true } }),
    );
    const loaded = await demandStory(tx, number, version);
    const { row, story, subjectKind } = loaded;
    const customer = row.customerId ? await tx.customer.findUnique({ where: { id: row.customerId } }) : null;
    const names = await loadPeopleNames(tx, [
      ...(row.openedById ? [row.openedById] : []),
      ...row.entries.flatMap(({ saidById }) => saidById ?? []),
    ]);
    const holds = await tx.hold.findMany({
      where: { nonconformityId: row.id },
      orderBy: { placedAt: "asc" },
    });
    const toHold = await loadWorkToHold(tx, { kind: subjectKind, id: row.subjectId });
    const since = new Map<bigint, readonly string[]>();
    for (const { figures, id, saidAt } of row.entries)
      since.set(id, await signedSince(tx, { figures: readFigures(figures), saidAt }));
    const isStaff = actor.kind === "staff";
    const mayDecide = isStaff && may(actor.roles, "nonconformity.decide");
    return {
      number,
      version,
      kind: row.kind as NonconformityKind,
      state: row.state as NonconformityState,
      title: row.title,
      description: row.description,
      subjectKind,
      subjectName: row.subjectName,
      subjectId: row.subjectId,
      customer: customer?.name ?? null,
      openedBy: row.openedById ? (names.get(row.openedById) ?? "a customer") : "the platform",
      openedAt: row.openedAt.toISOString(),
      entries: row.entries.map((entry) => ({
        key: String(entry.id),
        kind: entry.kind as EntryKind,
        text: entry.text,
        figures: readFigures(entry.figures),
        /** Certificates of the runs it lists that were signed after it. */
        signedSince: since.get(entry.id) ?? [],
        saidBy: entry.saidById ? (names.get(entry.saidById) ?? "") : "the platform",
        saidAt: entry.saidAt.toISOString(),
      })),
      holds: await describeHolds(tx, holds),
      /** Sensors that could still be stopped. */
      toHold: toHold
        .filter(({ id }) => !loaded.openHolds.some(({ sensorId }) => sensorId === id))
        .map(({ tag }) => tag),
      openHolds: loaded.openHolds.length,
      mayOpen: isStaff && may(actor.roles, "nonconformity.open"),
      mayHold: isStaff && may(actor.roles, "hold.place"),
      mayDecide,
      mayClose: mayDecide && isStaff && !isInvolved(story, actor.personId),
    };
  });

export type NonconformityPage = Awaited<ReturnType<typeof nonconformityView>>;
