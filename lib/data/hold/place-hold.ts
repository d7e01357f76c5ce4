import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { holdEvents } from "@/lib/domain/hold/events";
import type { HoldKind } from "@/lib/domain/hold/labels";
import type { Tx } from "../in-scope";

export type NewHold = {
  readonly customerId: string;
  readonly orderId: string;
  readonly orderNumber: string;
  /** null: the whole order. */
  readonly sensor: { readonly id: string; readonly tag: string } | null;
  readonly kind: HoldKind;
  readonly reason: string;
  readonly nonconformityId?: string;
  readonly placedById: string;
  readonly placedAt: Date;
};

/** Puts a sensor or an order on hold; answers its id and the event to return with one's own. */
export const placeHold = async (
  tx: Tx,
  { orderNumber, sensor, ...hold }: NewHold,
): Promise<{ readonly id: string; readonly event: AuditEvent }> => {
  const { id } = await tx.hold.create({
    data: { ...hold, sensorId: sensor?.id ?? null },
    select: { id: true },
  });
  const { kind, reason } = hold;
  return { id, event: eventOf(holdEvents.placed, id, { orderNumber, tag: sensor?.tag ?? "", kind, reason }) };
};
