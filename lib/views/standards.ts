import { loadAcceptedCalibrations } from "@/lib/data/calibration/calibration-store";
import { loadAllEquipment } from "@/lib/data/equipment/equipment-store";
import { readEntry } from "@/lib/data/equipment/logbook-store";
import { loadServicePolicy } from "@/lib/data/equipment/service-policy-store";
import type { Tx } from "@/lib/data/in-scope";
import { type DueState, dueState } from "@/lib/domain/calibration/due";
import { calibrationInForce } from "@/lib/domain/calibration/in-force";
import type { LogEntry } from "@/lib/domain/equipment/logbook";
import { dueDay, type ServiceGround, serviceFindings } from "@/lib/domain/equipment/service-problem";
import { serviceStanding } from "@/lib/domain/equipment/service-standing";
import type { EquipmentKind, EquipmentState } from "@/lib/domain/equipment/types";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "./view";

export type StandardRow = {
  readonly id: string;
  readonly tag: string;
  readonly kind: EquipmentKind;
  readonly typeLetter: string | null;
  readonly model: string;
  readonly serial: string;
  readonly location: string;
  readonly state: EquipmentState;
  readonly certificate: string | null;
  readonly issuer: string | null;
  readonly dueOn: string | null;
  readonly due: DueState;
  /** Of checks and maintenance the one that comes first; null where none is planned. */
  readonly workDueOn: string | null;
  readonly workDue: DueState;
  /** What its logbook says against it while it is in service; the first one blocks where any does. */
  readonly against: { readonly ground: ServiceGround; readonly blocks: boolean } | null;
};

const loadLogbooks = async (tx: Tx): Promise<ReadonlyMap<string, readonly LogEntry[]>> => {
  const books = new Map<string, LogEntry[]>();
  for (const row of await tx.equipmentEntry.findMany({ orderBy: { id: "asc" } })) {
    const book = books.get(row.equipmentId);
    if (book) book.push(readEntry(row));
    else books.set(row.equipmentId, [readEntry(row)]);
  }
  return books;
};

const earlier = (one: string | null, other: string | null): string | null =>
  one === null || (other !== null && other < one) ? other : one;

/** What the laboratory measures with, each with the calibration that counts today and what its logbook says of it. */
export const standardsView = (actor: Actor, today: string): Promise<StandardRow[]> =>
  answer(actor, "laboratory.read", async (tx) => {
    const equipment = await loadAllEquipment(tx);
    const calibrations = await loadAcceptedCalibrations(tx);
    const logbooks = await loadLogbooks(tx);
    const { policy } = await loadServicePolicy(tx);
    return equipment.map((one) => {
      const own = calibrations.filter((calibration) => calibration.equipmentId === one.id);
      const inForce = calibrationInForce(own, today);
      const standing = serviceStanding(one, logbooks.get(one.id) ?? [], inForce?.performedOn ?? null);
      const workDueOn = earlier(
        dueDay(standing.check, standing.since),
        dueDay(standing.maintenance, standing.since),
      );
      const [against] =
        one.state === "in-service" ? serviceFindings({ ...one, standing }, policy, today) : [];
      return {
        id: one.id,
        tag: one.tag,
        kind: one.kind,
        typeLetter:
          one.particulars.kind === "reference" || one.particulars.kind === "lead"
            ? one.particulars.type
            : null,
        model: [one.maker, one.model].filter(Boolean).join(", "),
        serial: one.serial,
        location: one.location,
        state: one.state,
        certificate: inForce?.certificate ?? null,
        issuer: inForce?.issuer ?? null,
        dueOn: inForce?.dueOn ?? null,
        due: dueState(inForce?.dueOn ?? null, today),
        workDueOn,
        workDue: dueState(workDueOn, today),
        against: against ? { ground: against.ground, blocks: against.blocks } : null,
      };
    });
  });
