import type { AuditEvent } from "@/lib/domain/audit/define-event";
import { type News, newsOf } from "@/lib/domain/mail/news";
import type { Tx } from "../in-scope";
import { publicUrl } from "../public-url";
import { orderFacts } from "./order-facts";
import { readyCertificates } from "./ready-certificates";
import { customerRecipients, deskRecipients } from "./recipients";
import { writeTo } from "./tell-customer";

const orderSelect = { id: true, number: true, customerId: true, state: true, promisedOn: true } as const;

const orderOf = async (tx: Tx, event: AuditEvent) => {
  if (event.entityKind === "order")
    return tx.order.findUnique({ where: { id: event.entityId }, select: orderSelect });
  if (event.entityKind === "certificate") {
    const row = await tx.certificate.findUnique({ where: { id: event.entityId }, select: { orderId: true } });
    return row && tx.order.findUnique({ where: { id: row.orderId }, select: orderSelect });
  }
  const { orderNumber } = event.payload as { readonly orderNumber: string };
  return tx.order.findUnique({ where: { number: orderNumber }, select: orderSelect });
};

type Order = NonNullable<Awaited<ReturnType<typeof orderOf>>>;
type Told = {
  readonly news: News;
  readonly order: Order;
  count: number;
  readonly isUnmade: boolean;
  readonly awaitsAnother: boolean;
};

/** A certificate that ended before its document was made. */
const isUnmade = async (tx: Tx, { entityId, entityKind }: AuditEvent): Promise<boolean> =>
  entityKind === "certificate" &&
  (await tx.certificateFile.count({ where: { certificateId: entityId } })) === 0;

/** A request says itself how many sensors it is for; of sensors and certificates there is one event each. */
const weightOf = ({ payload }: AuditEvent): number =>
  (payload as { readonly quantity?: number }).quantity ?? 1;

const awaitsAnother = ({ payload }: AuditEvent): boolean =>
  (payload as { readonly awaitsAnother?: boolean }).awaitsAnother === true;

const gather = async (tx: Tx, events: readonly AuditEvent[]): Promise<readonly Told[]> => {
  const told = new Map<string, Told>();
  for (const event of events)
    for (const news of newsOf(event.action)) {
      const order = await orderOf(tx, event);
      if (!order || (news.whileAccepted && order.state !== "accepted")) continue;
      const count = news.counts ? await readyCertificates(tx, event) : weightOf(event);
      if (count === 0) continue;
      const key = `${news.kind} ${order.number}`;
      const known = told.get(key);
      if (known) known.count += count;
      else
        told.set(key, {
          ...{ news, order, count, isUnmade: await isUnmade(tx, event) },
          awaitsAnother: awaitsAnother(event),
        });
    }
  return [...told.values()];
};

/**
 * Writes to whoever waits for what just happened, from the facts the operation returned. Twenty sensors taken in at once
 * are one letter.
 */
export const tellNews = async (tx: Tx, events: readonly AuditEvent[], now: Date): Promise<void> => {
  if (publicUrl() === null || !events.some(({ action }) => newsOf(action).length > 0)) return;
  const laboratory = (await tx.laboratory.findFirst({ select: { name: true } }))?.name ?? "The laboratory";
  for (const { news, order, count, isUnmade, awaitsAnother } of await gather(tx, events)) {
    const isToDesk = news.to === "desk";
    const recipients = isToDesk ? await deskRecipients(tx) : await customerRecipients(tx, order.customerId);
    const place = isToDesk ? "/orders/" : "/portal/orders/";
    const facts = await orderFacts(tx, news.kind, order.id);
    const promisedOn = order.promisedOn?.toISOString().slice(0, 10) ?? null;
    await writeTo(
      tx,
      recipients,
      news.kind,
      ({ name }, origin) =>
        news.compose({
          ...{ name, laboratory, orderNumber: order.number, promisedOn, count, isUnmade, awaitsAnother },
          ...facts,
          link: `${origin}${place}${order.number}`,
        }),
      now,
    );
  }
};
