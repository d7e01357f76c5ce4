import { demandSaved } from "@/lib/data/versioned";
import { eventOf } from "@/lib/domain/audit/define-event";
import { custodyEvents } from "@/lib/domain/custody/events";
import { RetentionInput } from "@/lib/domain/custody/schema";
import { defineOperation } from "../operation";

/** How many days after its certificate a sensor may stay before it is listed for return or disposal. */
export const setRetention = defineOperation({
  name: "custody/set-retention",
  permission: "storage.configure",
  input: RetentionInput,
  perform: async ({ tx }, { version, days }) => {
    demandSaved(
      await tx.laboratory.updateMany({
        where: { version },
        data: { sensorRetentionDays: days, version: { increment: 1 } },
      }),
    );
    return { value: { days }, events: [eventOf(custodyEvents.retentionSet, "laboratory", { days })] };
  },
});
