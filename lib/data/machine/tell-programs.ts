import type { AuditEvent } from "@/lib/domain/audit/define-event";
import { topicOf, type WebhookTopic } from "@/lib/domain/machine/topics";
import type { WebhookBody } from "@/lib/domain/machine/wire/webhook-body";
import type { Tx } from "../in-scope";
import { tellWebhooks } from "./webhook-store";

type Told = { readonly customerId: string; readonly body: WebhookBody };

const byOrder = async (tx: Tx, where: { id: string } | { number: string }, topic: WebhookTopic) => {
  const order = await tx.order.findUnique({ where, select: { number: true, customerId: true } });
  return order && { customerId: order.customerId, body: { topic, order: order.number } };
};

const byCertificate = async (tx: Tx, id: string, topic: WebhookTopic): Promise<Told | null> => {
  const row = await tx.certificate.findUnique({
    where: { id },
    select: { number: true, customerId: true, orderId: true },
  });
  const order = row && (await tx.order.findUnique({ where: { id: row.orderId }, select: { number: true } }));
  return (
    order && { customerId: row.customerId, body: { topic, order: order.number, certificate: row.number } }
  );
};

const toldOf = (tx: Tx, event: AuditEvent, topic: WebhookTopic): Promise<Told | null> => {
  if (event.entityKind === "certificate") return byCertificate(tx, event.entityId, topic);
  if (event.entityKind === "order") return byOrder(tx, { id: event.entityId }, topic);
  const { orderNumber } = event.payload as { readonly orderNumber: string };
  return byOrder(tx, { number: orderNumber }, topic);
};

/**
 * Tells the customers' programs what just happened, from the facts the operation returned: none can forget to. Twenty
 * sensors taken in at once are told once. With nobody listening it costs one query, and for most operations none.
 */
export const tellPrograms = async (tx: Tx, events: readonly AuditEvent[], now: Date): Promise<void> => {
  const telling = events.flatMap((event) => {
    const topic = topicOf(event.action);
    return topic ? [{ event, topic }] : [];
  });
  if (telling.length === 0 || (await tx.webhook.count({ where: { endedAt: null } })) === 0) return;
  const said = new Set<string>();
  for (const { event, topic } of telling) {
    const told = await toldOf(tx, event, topic);
    const key = JSON.stringify(told);
    if (!told || said.has(key)) continue;
    said.add(key);
    await tellWebhooks(tx, told.customerId, told.body, now);
  }
};
