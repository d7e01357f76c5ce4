import type { Tx } from "@/lib/data/in-scope";
import { type PromisedWorkRow, promisedWork } from "@/lib/data/sql/promised-work";
import { type Outlook, outlookOf } from "@/lib/domain/order/outlook";
import { dayAfter } from "@/lib/domain/order/working-days";

/** What is promised later than this is not at risk today. */
const horizonDays = 10;

export type PromisedOrder = PromisedWorkRow & { readonly toCome: number; readonly outlook: Outlook };

/** The largest load that a furnace here takes, less two places for references. */
const loadPlaces = async (tx: Tx): Promise<number> => {
  const { _max } = await tx.furnaceConfiguration.aggregate({ _max: { places: true } });
  return Math.max(1, (_max.places ?? 10) - 2);
};

/** Accepted orders whose promised day is past or near, each with its outlook. */
export const loadOutlooks = async (tx: Tx, today: string): Promise<readonly PromisedOrder[]> => {
  const places = await loadPlaces(tx);
  return (await promisedWork(tx, dayAfter(today, horizonDays))).map((row) => {
    const toCome = Math.max(0, (row.ordered ?? 0) - row.toMeasure - row.toIssue - row.done);
    return { ...row, toCome, outlook: outlookOf({ ...row, toCome }, today, places) };
  });
};
