import { loadAllEquipment } from "@/lib/data/equipment/equipment-store";
import type { Tx } from "@/lib/data/in-scope";
import { loadDueThings } from "@/lib/data/reminder/due-things";
import type { EquipmentState } from "@/lib/domain/equipment/types";
import { dueKindLabels } from "@/lib/domain/reminder/labels";
import { stageOf } from "@/lib/domain/reminder/stage-of";
import type { DueThing } from "@/lib/domain/reminder/types";
import { type TodayItem, todayShown, type Waiting } from "./waiting";

/** As for the due days: what is not yet, or no longer, in use is left out. */
const inUse = new Set<EquipmentState>(["verified", "in-service", "suspect"]);

const itemOf = (thing: DueThing, today: string): TodayItem[] => {
  const stage = stageOf(thing.dueOn, today);
  if (stage === null) return [];
  const what = dueKindLabels[thing.dueKind].toLowerCase();
  return [
    {
      key: `${thing.dueKind} ${thing.subjectId}`,
      label: thing.title,
      detail: `${what} ${stage === "due" ? "due" : "out of date since"} ${thing.dueOn}`,
      href: thing.path,
      state: stage,
    },
  ];
};

/**
 * Due within the notice or out of date: calibrations, checks, maintenance, characterisations. And references and
 * voltmeters without any calibration that counts, which no due day would tell.
 */
export const thingsDue = async (tx: Tx, today: string): Promise<Waiting> => {
  const things = await loadDueThings(tx, today);
  const calibrated = new Set(
    things.filter(({ dueKind }) => dueKind === "calibration").map(({ subjectId }) => subjectId),
  );
  const without = (await loadAllEquipment(tx)).filter(
    ({ id, kind, state }) =>
      inUse.has(state) && (kind === "reference" || kind === "voltmeter") && !calibrated.has(id),
  );
  const due = [
    ...without.map(({ id, tag }) => ({
      key: `calibration ${id}`,
      label: tag,
      detail: "no accepted calibration",
      href: `/standards/${id}`,
      state: "out-of-date",
    })),
    ...things.flatMap((thing) => itemOf(thing, today)),
  ];
  return { count: due.length, items: due.slice(0, todayShown) };
};
