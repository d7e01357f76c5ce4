import type { Task } from "graphile-worker";
import { deliverWebhook } from "@/lib/operations/machine/deliver-webhook";
import { httpCourier } from "./http-courier";
import type { Work } from "./work";

/** Tells a customer's program one thing. Given by `insertWebhookMessage`, under a key of that message's own. */
export const sendWebhook =
  ({ clock, mayTellOwnNetwork }: Work): Task =>
  async (payload, { job }) => {
    const { webhookMessageId } = payload as { readonly webhookMessageId: string };
    const courier = httpCourier(mayTellOwnNetwork ?? false);
    await deliverWebhook(webhookMessageId, courier, job.attempts >= job.max_attempts, clock);
  };
