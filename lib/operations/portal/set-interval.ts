import { loadLastCalibrations } from "@/lib/data/portal/last-calibrations";
import { insertInterval } from "@/lib/data/portal/recall-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { recallEvents } from "@/lib/domain/recall/events";
import { RecallInput } from "@/lib/domain/recall/schema";
import { Refused } from "@/lib/domain/refusal";
import { customerIdOf } from "@/lib/domain/staff/customer-id-of";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** The customer says how often a sensor, or each of them, is to be calibrated. The laboratory proposes nothing here (7.8.4.3). */
export const setInterval = defineOperation({
  name: "portal/set-interval",
  permission: "portal.manage",
  scope: "laboratory",
  input: RecallInput,
  perform: async ({ actor, now, tx }, { serial, months, noticeDays }) => {
    const customerId = customerIdOf(actor);
    if (serial !== "") {
      const own = await loadLastCalibrations(tx, customerId);
      if (!own.some((sensor) => sensor.serial === serial))
        throw new Refused({
          code: "invalid",
          message: "Nothing was stored; what you typed is still here.",
          fields: { serial: "No sensor of yours with this number has a certificate here." },
        });
    }
    const row = { customerId, serial, months, noticeDays };
    await insertInterval(tx, { ...row, setById: personIdOf(actor), setAt: now });
    const payload = { serial, months, noticeDays };
    return { value: payload, events: [eventOf(recallEvents.intervalSet, customerId, payload)] };
  },
});
