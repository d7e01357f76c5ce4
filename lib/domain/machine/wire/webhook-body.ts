import { z } from "zod";
import { webhookTopics } from "../topics";

/** What a webhook carries: that something happened and to what, never a result. The rest is asked for with a token. */
export const WebhookBody = z.strictObject({
  topic: z.enum(webhookTopics),
  order: z.string().describe("Number of the order; empty for a test."),
  certificate: z.string().optional().describe("Number of the certificate."),
});
export type WebhookBody = z.output<typeof WebhookBody>;
