import { z } from "zod";
import type { Tx } from "@/lib/data/in-scope";
import { endWebhookAt, insertWebhookMessage, loadWebhook } from "@/lib/data/machine/webhook-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { machineEvents } from "@/lib/domain/machine/events";
import { Refused } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";
import { demandOwn } from "@/lib/domain/staff/demand-own";
import { defineOperation } from "../operation";

const input = z.strictObject({ id: z.uuid() });

const demandWebhook = async (tx: Tx, actor: Actor, id: string) => {
  const webhook = await loadWebhook(tx, id);
  demandOwn(actor, webhook?.customerId);
  if (!webhook || webhook.endedAt)
    throw new Refused({
      code: "wrong-state",
      message: "This address was ended before. Nothing was changed.",
    });
  return webhook;
};

export const endWebhook = defineOperation({
  name: "machine/end-webhook",
  permission: "portal.manage",
  scope: "laboratory",
  input,
  perform: async ({ actor, now, tx }, { id }) => {
    const { url } = await demandWebhook(tx, actor, id);
    await endWebhookAt(tx, id, now);
    return { value: null, events: [eventOf(machineEvents.webhookEnded, id, { url })] };
  },
});

/** A message that tells nothing but that messages arrive. */
export const testWebhook = defineOperation({
  name: "machine/test-webhook",
  permission: "portal.manage",
  scope: "laboratory",
  input,
  perform: async ({ actor, now, tx }, { id }) => {
    const webhook = await demandWebhook(tx, actor, id);
    await insertWebhookMessage(tx, webhook, { topic: "test", order: "" }, now);
    return { value: null, events: [eventOf(machineEvents.webhookTested, id, { url: webhook.url })] };
  },
});
