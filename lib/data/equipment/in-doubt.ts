import { type DoubtReport, doubtOf } from "@/lib/domain/equipment/doubt";
import type { EquipmentState } from "@/lib/domain/equipment/types";
import type { InDoubt } from "@/lib/domain/review/decide-not-in-doubt";
import type { Tx } from "../in-scope";
import { readEntry } from "./logbook-store";

type Run = {
  readonly configurationId: string;
  readonly voltmeterId: string;
  readonly scannerId: string;
  readonly ambientId: string | null;
  readonly createdAt: Date;
  readonly places: readonly {
    readonly equipmentId: string | null;
    readonly junctionId: string;
    readonly leadId: string | null;
  }[];
};

const standsOn = async (tx: Tx, run: Run): Promise<readonly string[]> => {
  const configuration = await tx.furnaceConfiguration.findUnique({
    where: { id: run.configurationId },
    select: { furnace: { select: { equipmentId: true } } },
  });
  const ids = [
    run.voltmeterId,
    run.scannerId,
    run.ambientId,
    configuration?.furnace.equipmentId,
    ...run.places.flatMap(({ equipmentId, junctionId, leadId }) => [equipmentId, junctionId, leadId]),
  ].flatMap((id) => id ?? []);
  return [...new Set(ids)];
};

/** Nonconforming work by the id of what it was found on, the oldest first. */
const reportsOn = async (
  tx: Tx,
  subjectIds: readonly string[],
): Promise<readonly (DoubtReport & { readonly subjectId: string | null })[]> => {
  const rows = await tx.nonconformity.findMany({
    where: { subjectKind: { in: ["equipment", "calibration"] }, subjectId: { in: [...subjectIds] } },
    orderBy: { openedAt: "asc" },
    include: { entries: { where: { kind: "effect" }, orderBy: { id: "desc" }, take: 1 } },
  });
  return rows.map(({ number, state, subjectId, openedAt, entries }) => ({
    ...{ number, subjectId, openedAt },
    isUnexamined: state === "open",
    isClosed: state === "closed",
    examinedAt: entries[0]?.saidAt ?? null,
  }));
};

/** What a run stands on that is in doubt now, its furnace included. */
export const loadInDoubt = async (tx: Tx, run: Run): Promise<readonly InDoubt[]> => {
  const equipment = await tx.equipment.findMany({
    where: { id: { in: [...(await standsOn(tx, run))] } },
    select: {
      ...{ id: true, tag: true, state: true, calibrations: { select: { id: true } } },
      entries: { orderBy: { id: "asc" } },
    },
    orderBy: { tag: "asc" },
  });
  const reports = await reportsOn(
    tx,
    equipment.flatMap(({ id, calibrations }) => [id, ...calibrations.map((one) => one.id)]),
  );
  return equipment.flatMap(({ id, tag, state, calibrations, entries }) => {
    const own = new Set([id, ...calibrations.map((one) => one.id)]);
    const doubt = doubtOf({
      state: state as EquipmentState,
      entries: entries.map((entry) => ({ ...readEntry(entry), recordedAt: entry.recordedAt })),
      reports: reports.filter(({ subjectId }) => own.has(subjectId ?? "")),
      runBeganAt: run.createdAt,
    });
    return doubt ? [{ id, tag, state, ...doubt }] : [];
  });
};
