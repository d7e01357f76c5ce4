import type { AuditEvent } from "@/lib/domain/audit/define-event";
import type { Tx } from "../in-scope";
import { placeHold } from "./place-hold";

type Received = {
  readonly id: string;
  readonly tag: string;
  readonly condition: string;
  readonly conditionNote: string;
};

/** ISO/IEC 17025 7.4.3: what comes in other than described waits, from the moment it is taken in. */
export const holdDeviating = async (
  tx: Tx,
  intake: {
    readonly orderId: string;
    readonly orderNumber: string;
    readonly customerId: string;
    readonly placedById: string;
    readonly placedAt: Date;
  },
  sensors: readonly Received[],
): Promise<readonly AuditEvent[]> => {
  const events: AuditEvent[] = [];
  for (const { id, tag, condition, conditionNote } of sensors) {
    if (condition !== "deviates") continue;
    const reason = conditionNote.trim() || "condition on receipt not as described";
    const { event } = await placeHold(tx, { ...intake, sensor: { id, tag }, kind: "condition", reason });
    events.push(event);
  }
  return events;
};
