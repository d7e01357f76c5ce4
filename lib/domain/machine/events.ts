import { z } from "zod";
import { defineEvent } from "../audit/define-event";

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. */
export const machineEvents = {
  tokenMade: defineEvent({
    action: "token.made",
    entityKind: "access-token",
    payload: z.strictObject({
      name: z.string(),
      beginning: z.string(),
      scopes: z.array(z.string()),
      customerId: z.uuid().nullable(),
      expiresAt: z.string(),
    }),
    sentence: (p) => `made the token ${p.name} (${p.beginning}…) for ${p.scopes.join(", ")}`,
  }),
  tokenRevoked: defineEvent({
    action: "token.revoked",
    entityKind: "access-token",
    payload: z.strictObject({ name: z.string(), beginning: z.string() }),
    sentence: (p) => `revoked the token ${p.name} (${p.beginning}…)`,
  }),
  webhookMade: defineEvent({
    action: "webhook.made",
    entityKind: "webhook",
    payload: z.strictObject({ url: z.string(), topics: z.array(z.string()), customerId: z.uuid() }),
    sentence: (p) => `asked to be told of ${p.topics.join(", ")} at ${p.url}`,
  }),
  webhookEnded: defineEvent({
    action: "webhook.ended",
    entityKind: "webhook",
    payload: z.strictObject({ url: z.string() }),
    sentence: (p) => `ended the messages to ${p.url}`,
  }),
  webhookTested: defineEvent({
    action: "webhook.tested",
    entityKind: "webhook",
    payload: z.strictObject({ url: z.string() }),
    sentence: (p) => `sent a test message to ${p.url}`,
  }),
  messageAttempted: defineEvent({
    action: "webhook.attempted",
    entityKind: "webhook",
    payload: z.strictObject({
      topic: z.string(),
      outcome: z.enum(["delivered", "failed", "given-up"]),
      detail: z.string(),
    }),
    sentence: (p) => `tried to tell a program of ${p.topic}: ${p.outcome} (${p.detail})`,
  }),
} as const;
