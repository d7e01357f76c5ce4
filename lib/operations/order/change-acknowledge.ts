import { loadOpenChanges } from "@/lib/data/order/change-store";
import { demandRun } from "@/lib/data/run/demand-run";
import { eventOf } from "@/lib/domain/audit/define-event";
import { AcknowledgeChangeInput } from "@/lib/domain/order/change-schema";
import { orderEvents } from "@/lib/domain/order/events";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Who works on the run has read the change; with the last one acknowledged, the run goes on. */
export const acknowledgeChange = defineOperation({
  name: "order.change-acknowledge",
  permission: "run.perform",
  input: AcknowledgeChangeInput,
  perform: async ({ actor, now, tx }, input) => {
    const run = await demandRun(tx, input.run);
    const change = (await loadOpenChanges(tx, run)).find(({ changeId }) => changeId === input.changeId);
    if (!change)
      throw new Refused({
        code: "changed-meanwhile",
        message: `No such change waits at run ${run.number}: perhaps somebody acknowledged it in between.`,
      });
    await tx.orderChangeAcknowledgment.create({
      data: {
        changeId: change.changeId,
        runId: run.id,
        acknowledgedById: personIdOf(actor),
        acknowledgedAt: now,
      },
    });
    const event = eventOf(orderEvents.changeAcknowledged, change.orderId, {
      number: change.orderNumber,
      change: change.sequence,
      run: run.number,
    });
    return { value: { run: run.number }, events: [event] };
  },
});
