/** What a customer's program can be told of as it happens. */
export const webhookTopics = [
  "order.accepted",
  "order.changed",
  "order.cancelled",
  "hold.ended",
  "sensors.received",
  "certificate.issued",
  "certificate.ended",
  "order.completed",
  "test",
] as const;
export type WebhookTopic = (typeof webhookTopics)[number];

export const webhookTopicLabels: Readonly<Record<Exclude<WebhookTopic, "test">, string>> = {
  "order.accepted": "An order was accepted",
  "order.changed": "An accepted order was changed",
  "order.cancelled": "An order was cancelled",
  "hold.ended": "What stood still was settled",
  "sensors.received": "Sensors were taken in",
  "certificate.issued": "A certificate was issued",
  "certificate.ended": "A certificate was amended, replaced or withdrawn",
  "order.completed": "An order is complete",
};

/** The audit event that makes a topic: told from the facts, so that no operation can forget to tell. */
const topicOfAction: Readonly<Record<string, Exclude<WebhookTopic, "test">>> = {
  "order.accepted": "order.accepted",
  "order.changed": "order.changed",
  "order.cancelled": "order.cancelled",
  "hold.released": "hold.ended",
  "sensor.received": "sensors.received",
  // Once its documents can be fetched.
  "certificate.issued": "certificate.issued",
  "certificate.amended": "certificate.ended",
  "certificate.replaced": "certificate.ended",
  "certificate.withdrawn": "certificate.ended",
  "order.completed": "order.completed",
};

export const topicOf = (action: string): Exclude<WebhookTopic, "test"> | undefined =>
  Object.hasOwn(topicOfAction, action) ? topicOfAction[action] : undefined;
