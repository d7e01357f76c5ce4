import type { IntervalRow } from "@/lib/domain/recall/sensors-due";
import type { Tx } from "../in-scope";

export const insertInterval = async (
  tx: Tx,
  row: IntervalRow & { readonly customerId: string; readonly setById: string; readonly setAt: Date },
): Promise<void> => {
  await tx.recallInterval.create({ data: row, select: { id: true } });
};

/** As they were said, the first first. */
export const loadIntervals = (tx: Tx, customerId: string): Promise<readonly IntervalRow[]> =>
  tx.recallInterval.findMany({
    where: { customerId },
    orderBy: { id: "asc" },
    select: { serial: true, months: true, noticeDays: true },
  });

/** Customers who ever set an interval. */
export const loadRecallingCustomers = async (tx: Tx): Promise<readonly string[]> =>
  (
    await tx.recallInterval.findMany({
      distinct: ["customerId"],
      select: { customerId: true },
      orderBy: { customerId: "asc" },
    })
  ).map(({ customerId }) => customerId);

export const loadReminded = async (tx: Tx, customerId: string) =>
  (await tx.recallReminder.findMany({ where: { customerId }, select: { serial: true, dueOn: true } })).map(
    ({ serial, dueOn }) => ({ serial, dueOn: dueOn.toISOString().slice(0, 10) }),
  );

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
