import { createHmac } from "node:crypto";
import { z } from "zod";
import { inScope } from "@/lib/data/in-scope";
import { insertWebhookAttempt, loadWebhookMessage } from "@/lib/data/machine/webhook-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { machineEvents } from "@/lib/domain/machine/events";
import { signedText, webhookHeaders } from "@/lib/domain/machine/webhook-text";
import { Refused } from "@/lib/domain/refusal";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";

/** What takes a signed message to its address, and what was answered when it did; throws where it was not taken. */
export type Courier = (
  url: string,
  headers: Readonly<Record<string, string>>,
  body: string,
) => Promise<string>;

const system = { kind: "system", name: "webhook" } as const;

const recordAttempt = defineOperation({
  name: "machine/record-webhook-attempt",
  permission: "system",
  input: z.strictObject({
    webhookMessageId: z.uuid(),
    outcome: z.enum(["delivered", "failed", "given-up"]),
    detail: z.string().min(1).max(300),
  }),
  perform: async ({ now, tx }, { webhookMessageId, outcome, detail }) => {
    const message = await loadWebhookMessage(tx, webhookMessageId);
    if (!message) throw new Refused({ code: "not-found", message: "This message is not here." });
    await insertWebhookAttempt(tx, webhookMessageId, outcome, detail, now);
    const { topic, webhookId } = message;
    return {
      value: null,
      events: [eventOf(machineEvents.messageAttempted, webhookId, { topic, outcome, detail })],
    };
  },
});

const said = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).replaceAll(/\s+/g, " ").trim().slice(0, 300) ||
  "no reason";

/**
 * Sends one message, signed anew at each attempt; its identity stays, so that whoever is told twice can see it. The
 * sending stands in no transaction. Throws when it was not taken, so that the queue brings it back.
 */
export const deliverWebhook = async (
  webhookMessageId: string,
  courier: Courier,
  isLastAttempt: boolean,
  clock: Clock,
): Promise<void> => {
  const message = await inScope({ kind: "laboratory" }, (tx) => loadWebhookMessage(tx, webhookMessageId));
  if (!message) throw new Error(`There is no webhook message ${webhookMessageId}`);
  // Ended meanwhile: nobody is told any more.
  if (message.isDelivered || message.hasEnded) return;
  const record = (outcome: "delivered" | "failed" | "given-up", detail: string) =>
    execute(recordAttempt, system, { webhookMessageId, outcome, detail }, clock);
  const seconds = Math.floor(clock().getTime() / 1000);
  const signature = createHmac("sha256", message.secret)
    .update(signedText(message.id, seconds, message.body))
    .digest("base64");
  let answer: string;
  try {
    answer = await courier(message.url, webhookHeaders(message.id, seconds, signature), message.body);
  } catch (error) {
    await record(isLastAttempt ? "given-up" : "failed", said(error));
    throw error;
  }
  await record("delivered", said(answer));
};
