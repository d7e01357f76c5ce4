import { randomUUID } from "node:crypto";
import type { WebhookTopic } from "@/lib/domain/machine/topics";
import type { WebhookBody } from "@/lib/domain/machine/wire/webhook-body";
import type { Tx } from "../in-scope";
import { seal, unseal } from "../seal";
import { enqueueRow } from "../sql/enqueue";

const ownerOf = (id: string): string => `webhook ${id}`;

const topicsOf = (stored: string): readonly string[] => JSON.parse(stored) as string[];

export type NewWebhook = {
  readonly customerId: string;
  readonly url: string;
  readonly topics: readonly WebhookTopic[];
  readonly secret: Uint8Array;
  readonly madeById: string;
  readonly madeAt: Date;
};

export const insertWebhook = async (tx: Tx, { secret, topics, ...webhook }: NewWebhook): Promise<string> => {
  const id = randomUUID();
  const sealedSecret = Uint8Array.from(seal(ownerOf(id), secret));
  await tx.webhook.create({ data: { id, ...webhook, topics: JSON.stringify(topics), sealedSecret } });
  return id;
};

export const loadWebhook = (tx: Tx, id: string) => tx.webhook.findUnique({ where: { id } });

export const endWebhookAt = async (tx: Tx, id: string, now: Date): Promise<void> => {
  await tx.webhook.update({ where: { id }, data: { endedAt: now }, select: { id: true } });
};

/** A customer's webhooks in force, each with how the last messages went. */
export const loadWebhooks = async (tx: Tx, customerId: string) => {
  const rows = await tx.webhook.findMany({
    where: { customerId, endedAt: null },
    orderBy: { madeAt: "asc" },
  });
  return rows.map(({ sealedSecret: _, ...row }) => ({ ...row, topics: topicsOf(row.topics) }));
};

export const loadLastAttempts = (tx: Tx, webhookId: string, take: number) =>
  tx.webhookAttempt.findMany({
    where: { message: { webhookId } },
    include: { message: { select: { topic: true } } },
    orderBy: { id: "desc" },
    take,
  });

/** Stores a message for one webhook and puts its sending into the queue: both with this transaction, or neither. */
export const insertWebhookMessage = async (
  tx: Tx,
  webhook: { readonly id: string; readonly customerId: string },
  body: WebhookBody,
  now: Date,
): Promise<string> => {
  const id = randomUUID();
  const { customerId } = webhook;
  const message = { webhookId: webhook.id, customerId, topic: body.topic, body: JSON.stringify(body) };
  await tx.webhookMessage.create({ data: { id, ...message, enqueuedAt: now } });
  await enqueueRow(tx, "send-webhook", `webhook:${id}`, JSON.stringify({ webhookMessageId: id }));
  return id;
};

/** What every webhook of this customer that wants to hear of this topic is told. */
export const tellWebhooks = async (
  tx: Tx,
  customerId: string,
  body: WebhookBody,
  now: Date,
): Promise<number> => {
  const listening = (await loadWebhooks(tx, customerId)).filter(({ topics }) => topics.includes(body.topic));
  for (const webhook of listening) await insertWebhookMessage(tx, webhook, body, now);
  return listening.length;
};

/** A message with where it goes and what it is signed with. */
export const loadWebhookMessage = async (tx: Tx, id: string) => {
  const row = await tx.webhookMessage.findUnique({
    where: { id },
    include: { webhook: true, attempts: true },
  });
  if (!row) return null;
  const { webhook, attempts, topic, body } = row;
  return {
    ...{ id, topic, body, webhookId: webhook.id, url: webhook.url, hasEnded: webhook.endedAt !== null },
    secret: unseal(ownerOf(webhook.id), webhook.sealedSecret),
    isDelivered: attempts.some(({ outcome }) => outcome === "delivered"),
  };
};

export const insertWebhookAttempt = async (
  tx: Tx,
  webhookMessageId: string,
  outcome: "delivered" | "failed" | "given-up",
  detail: string,
  now: Date,
): Promise<void> => {
  await tx.webhookAttempt.create({ data: { webhookMessageId, outcome, detail, happenedAt: now } });
};
