import type { Tx } from "@/lib/data/in-scope";
import { loadPeopleNames } from "@/lib/data/review/load-people-names";
import type { HoldKind, HoldOutcome } from "@/lib/domain/hold/labels";
import type { AnswerWay } from "@/lib/domain/question/labels";
import { readChoices } from "@/lib/domain/question/read-choices";

type Rows<T> = Promise<readonly T[]>;
type HoldRow = Awaited<ReturnType<Tx["hold"]["findMany"]>>[number];

const questionsOf = async (tx: Tx, holdIds: readonly string[]) => {
  const rows = await tx.question.findMany({
    where: { holdId: { in: [...holdIds] } },
    orderBy: { askedAt: "asc" },
  });
  const answers = await tx.answer.findMany({ where: { questionId: { in: rows.map(({ id }) => id) } } });
  return rows.map(({ id, holdId, text, choices, askedAt }) => {
    const answer = answers.find(({ questionId }) => questionId === id) ?? null;
    return {
      id,
      holdId,
      text,
      choices: readChoices(choices),
      askedAt: askedAt.toISOString(),
      answer: answer && {
        choice: answer.choice,
        text: answer.text,
        insists: answer.insists,
        cameBy: answer.cameBy as AnswerWay,
        saidByName: answer.saidByName,
        saidAt: answer.saidAt.toISOString(),
      },
    };
  });
};

/** Holds as pages show them: with their questions, answers and end. */
export const describeHolds = async (tx: Tx, rows: readonly HoldRow[]) => {
  const ids = rows.map(({ id }) => id);
  const questions = await questionsOf(tx, ids);
  const releases = await tx.holdRelease.findMany({ where: { holdId: { in: ids } } });
  const sensors = await tx.sensor.findMany({
    where: { id: { in: rows.flatMap(({ sensorId }) => sensorId ?? []) } },
    select: { id: true, tag: true, state: true },
  });
  const orders = await tx.order.findMany({
    where: { id: { in: rows.map(({ orderId }) => orderId) } },
    select: { id: true, number: true, customer: { select: { name: true } } },
  });
  const inReview = await tx.sensor.findMany({
    where: { state: "in-review", line: { orderId: { in: rows.map(({ orderId }) => orderId) } } },
    select: { id: true, line: { select: { orderId: true } } },
  });
  const stories = await tx.nonconformity.findMany({
    where: { id: { in: rows.flatMap(({ nonconformityId }) => nonconformityId ?? []) } },
    select: { id: true, number: true },
  });
  const names = await loadPeopleNames(tx, [
    ...rows.map(({ placedById }) => placedById),
    ...releases.flatMap(({ releasedById }) => releasedById ?? []),
  ]);
  return rows.map((row) => {
    const release = releases.find(({ holdId }) => holdId === row.id) ?? null;
    const order = orders.find(({ id }) => id === row.orderId);
    const own = questions.filter(({ holdId }) => holdId === row.id);
    return {
      id: row.id,
      tag: sensors.find(({ id }) => id === row.sensorId)?.tag ?? "",
      /** It stands on one sensor, and that lies here in no run. */
      isOnShelf: sensors.find(({ id }) => id === row.sensorId)?.state === "received",
      /** Something it stands on was measured and waits in review: that does not go back unmeasured. */
      isInReview: inReview.some(({ id, line }) =>
        row.sensorId ? row.sensorId === id : row.orderId === line.orderId,
      ),
      orderNumber: order?.number ?? "",
      customer: order?.customer.name ?? "",
      kind: row.kind as HoldKind,
      reason: row.reason,
      nonconformity: stories.find(({ id }) => id === row.nonconformityId)?.number ?? null,
      placedBy: names.get(row.placedById) ?? "",
      placedAt: row.placedAt.toISOString(),
      questions: own,
      isWaiting: own.some(({ answer }) => answer === null),
      isInsisted: own.some(({ answer }) => answer?.insists === true),
      release: release && {
        outcome: release.outcome as HoldOutcome,
        reason: release.reason,
        disclaimer: release.disclaimer,
        awaitsAnother: release.awaitsAnother,
        releasedBy: release.releasedById ? (names.get(release.releasedById) ?? "") : "",
        releasedAt: release.releasedAt.toISOString(),
      },
    };
  });
};

export type HoldView = Awaited<ReturnType<typeof describeHolds>>[number];

export const holdRows = (tx: Tx, orderId: string, sensorId: string | null): Rows<HoldRow> =>
  tx.hold.findMany({
    where: { orderId, ...(sensorId ? { OR: [{ sensorId: null }, { sensorId }] } : {}) },
    orderBy: [{ placedAt: "asc" }, { id: "asc" }],
  });
