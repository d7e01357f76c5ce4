import { z } from "zod";
import { inScope } from "@/lib/data/in-scope";
import { tellCustomer } from "@/lib/data/mail/tell-customer";
import { loadLastCalibrations } from "@/lib/data/portal/last-calibrations";
import {
  insertReminded,
  loadIntervals,
  loadRecallingCustomers,
  loadReminded,
} from "@/lib/data/portal/recall-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { recallDueLetter } from "@/lib/domain/mail/letters/recall-due";
import { recallEvents } from "@/lib/domain/recall/events";
import { sensorsDue, toRemind } from "@/lib/domain/recall/sensors-due";
import { Refused } from "@/lib/domain/refusal";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";

const tellRecall = defineOperation({
  name: "reminder/remind-of-recall",
  permission: "system",
  input: z.strictObject({ customerId: z.uuid() }),
  perform: async ({ now, tx }, { customerId }) => {
    const due = sensorsDue(
      await loadIntervals(tx, customerId),
      await loadLastCalibrations(tx, customerId),
      isoDay(now),
    );
    const open = toRemind(due, await loadReminded(tx, customerId));
    if (open.length === 0) throw new Refused({ code: "wrong-state", message: "There is nothing to tell." });
    const laboratory = (await tx.laboratory.findFirst({ select: { name: true } }))?.name ?? "The laboratory";
    const messages = await tellCustomer(
      tx,
      customerId,
      "recall-due",
      ({ name }, origin) =>
        recallDueLetter({ name, laboratory, count: open.length, link: `${origin}/portal/sensors` }),
      now,
    );
    await insertReminded(tx, customerId, open, now);
    const payload = { sensors: open.length, messages };
    return { value: payload, events: [eventOf(recallEvents.told, customerId, payload)] };
  },
});

/**
 * Tells each customer once of each sensor that comes due by their own interval: one letter a customer, each in a
 * transaction of its own, so that one that fails keeps no other from being told.
 */
export const remindOfRecall = async (
  clock: Clock,
): Promise<{ readonly customers: number; readonly sensors: number }> => {
  const customers = await inScope({ kind: "laboratory" }, loadRecallingCustomers);
  const told = { customers: 0, sensors: 0 };
  const failures: unknown[] = [];
  for (const customerId of customers) {
    try {
      const { sensors } = await execute(
        tellRecall,
        { kind: "system", name: "reminder" },
        { customerId },
        clock,
      );
      told.customers += 1;
      told.sensors += sensors;
    } catch (error) {
      if (!(error instanceof Refused) || error.refusal.code !== "wrong-state") failures.push(error);
    }
  }
  // The job then comes back by itself; those who were told are not told again.
  if (failures.length > 0) throw new AggregateError(failures, "a customer could not be reminded");
  return told;
};
