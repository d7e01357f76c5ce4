import { namesSince } from "@/lib/domain/recall/renamed";
import type { IntervalRow } from "@/lib/domain/recall/sensors-due";
import type { Tx } from "../in-scope";
import { loadNamings } from "./load-namings";

export const insertInterval = async (
  tx: Tx,
  row: IntervalRow & { readonly customerId: string; readonly setById: string; readonly setAt: Date },
): Promise<void> => {
  await tx.recallInterval.create({ data: row, select: { id: true } });
};

/** Each of a serial goes to what is called so now: a certificate that followed may have corrected it since. */
const underTodaysNames = async <T extends { readonly serial: string }>(
  tx: Tx,
  customerId: string,
  rows: readonly T[],
  saidAt: (row: T) => Date,
): Promise<readonly T[]> => {
  const serials = rows.map(({ serial }) => serial).filter((serial) => serial !== "");
  if (serials.length === 0) return rows;
  const namings = await loadNamings(tx, customerId, serials);
  return rows.flatMap((row) =>
    row.serial === ""
      ? [row]
      : namesSince(namings, row.serial, saidAt(row)).map((serial) => ({ ...row, serial })),
  );
};

/** As they were said, the first first, under the serials of today. */
export const loadIntervals = async (tx: Tx, customerId: string): Promise<readonly IntervalRow[]> => {
  const rows = await tx.recallInterval.findMany({
    where: { customerId },
    orderBy: { id: "asc" },
    select: { serial: true, months: true, noticeDays: true, setAt: true },
  });
  const named = await underTodaysNames(tx, customerId, rows, ({ setAt }) => setAt);
  return named.map(({ serial, months, noticeDays }) => ({ serial, months, noticeDays }));
};

/** Customers who ever set an interval. */
export const loadRecallingCustomers = async (tx: Tx): Promise<readonly string[]> =>
  (
    await tx.recallInterval.findMany({
      distinct: ["customerId"],
      select: { customerId: true },
      orderBy: { customerId: "asc" },
    })
  ).map(({ customerId }) => customerId);

/** Told once, under whichever serial. */
export const loadReminded = async (tx: Tx, customerId: string) => {
  const rows = await tx.recallReminder.findMany({
    where: { customerId },
    select: { serial: true, dueOn: true, remindedAt: true },
  });
  const named = await underTodaysNames(tx, customerId, rows, ({ remindedAt }) => remindedAt);
  return named.map(({ serial, dueOn }) => ({ serial, dueOn: dueOn.toISOString().slice(0, 10) }));
};

export const insertReminded = async (
  tx: Tx,
  customerId: string,
  told: readonly { readonly serial: string; readonly dueOn: string }[],
  now: Date,
): Promise<void> => {
  await tx.recallReminder.createMany({
    data: told.map(({ serial, dueOn }) => ({
      ...{ customerId, serial, remindedAt: now },
      dueOn: new Date(dueOn),
    })),
  });
};
