import type { Tx } from "@/lib/data/in-scope";
import { loadFurnaceLoad } from "@/lib/data/promise/furnace-load";
import { loadPromisePolicy } from "@/lib/data/promise/policy-store";
import { type PromisedWorkRow, promisedWork } from "@/lib/data/sql/promised-work";
import { isoDay } from "@/lib/domain/calibration/due";
import { type Outlook, outlookOf } from "@/lib/domain/order/outlook";
import { dayAfter } from "@/lib/domain/order/working-days";
import { takenOver } from "@/lib/domain/promise/taken-over";

/** What is promised later than this is not at risk today. */
const horizonDays = 10;

export type PromisedOrder = PromisedWorkRow & { readonly toCome: number; readonly outlook: Outlook };

/** The largest load that a furnace here takes, less two places for references. */
const loadPlaces = async (tx: Tx): Promise<number> => {
  const { _max } = await tx.furnaceConfiguration.aggregate({ _max: { places: true } });
  return Math.max(1, (_max.places ?? 10) - 2);
};

/** Accepted orders whose promised day is past or near, each with its outlook. */
export const loadOutlooks = async (tx: Tx, now: Date): Promise<readonly PromisedOrder[]> => {
  const today = isoDay(now);
  const places = await loadPlaces(tx);
  const { policy } = await loadPromisePolicy(tx);
  const { reserved, placed } = await loadFurnaceLoad(tx, now, now, policy);
  const over = takenOver(reserved, placed);
  return (await promisedWork(tx, dayAfter(today, horizonDays))).map((row) => {
    const toCome = Math.max(0, (row.ordered ?? 0) - row.toMeasure - row.toIssue - row.done);
    const overlaps = over.get(row.id) ?? [];
    return { ...row, toCome, outlook: outlookOf({ ...row, toCome, overlaps }, today, places) };
  });
};
