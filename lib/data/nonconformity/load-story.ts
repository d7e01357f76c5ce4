import type { Story } from "@/lib/domain/nonconformity/decide-entry";
import type {
  EntryKind,
  NonconformityKind,
  NonconformityState,
  SubjectKind,
} from "@/lib/domain/nonconformity/labels";
import { Refused } from "@/lib/domain/refusal";
import type { Tx } from "../in-scope";

/** The runs a subject of one customer was measured in. */
const runsOf = async (tx: Tx, kind: SubjectKind, id: string): Promise<readonly string[]> => {
  if (kind === "run") return [id];
  if (kind === "certificate")
    return (await tx.certificate.findMany({ where: { id }, select: { runId: true } })).map(
      ({ runId }) => runId,
    );
  if (kind !== "sensor" && kind !== "order" && kind !== "customer") return [];
  const sensors = await tx.sensor.findMany({
    where: { sensor: { id }, order: { line: { orderId: id } }, customer: { customerId: id } }[kind],
    select: { id: true },
  });
  const places = await tx.loadPlace.findMany({
    where: { sensorId: { in: sensors.map((sensor) => sensor.id) } },
    select: { runId: true },
    distinct: ["runId"],
  });
  return places.map(({ runId }) => runId);
};

/** Who performed or signed the work. */
const involved = async (tx: Tx, kind: SubjectKind, id: string | null): Promise<readonly string[]> => {
  if (id === null) return [];
  const runIds = [...(await runsOf(tx, kind, id))];
  const runs = await tx.run.findMany({ where: { id: { in: runIds } }, select: { performerId: true } });
  const signed = await tx.certificate.findMany({
    where: { runId: { in: runIds }, ...(kind === "certificate" ? { id } : {}) },
    select: { signedById: true },
  });
  return [...new Set([...runs.map((run) => run.performerId), ...signed.map((one) => one.signedById)])];
};

/** One nonconformity with all that decides its next step; refused where it is not there or was changed meanwhile. */
export const demandStory = async (tx: Tx, number: string, version: number) => {
  const row = await tx.nonconformity.findUnique({
    where: { number },
    include: { entries: { orderBy: { id: "asc" } } },
  });
  if (!row) throw new Refused({ code: "not-found", message: `${number} is not here. Nothing was changed.` });
  if (row.version !== version)
    throw new Refused({
      code: "changed-meanwhile",
      message: `Somebody added to ${number} while you were writing. Nothing was stored; reload, look, and send it again.`,
    });
  const holds = await tx.hold.findMany({ where: { nonconformityId: row.id } });
  const released = await tx.holdRelease.findMany({
    where: { holdId: { in: holds.map(({ id }) => id) } },
    select: { holdId: true },
  });
  const isOpen = (id: string) => !released.some(({ holdId }) => holdId === id);
  const openHolds = holds.filter(({ id }) => isOpen(id));
  const subjectKind = row.subjectKind as SubjectKind;
  const story: Story = {
    number,
    kind: row.kind as NonconformityKind,
    state: row.state as NonconformityState,
    openedById: row.openedById,
    entries: row.entries.map(({ kind, saidById }) => ({ kind: kind as EntryKind, saidById })),
    openHolds: openHolds.length,
    involvedIds: await involved(tx, subjectKind, row.subjectId),
  };
  return { row, subjectKind, story, openHolds };
};

export type LoadedStory = Awaited<ReturnType<typeof demandStory>>;
