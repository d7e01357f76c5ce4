/**
 * The bytes a webhook is signed over, by the open specification "Standard Webhooks" 1.0: identity, seconds since 1970
 * and body, joined by full stops. The signature is HMAC-SHA256, in base64, with the version before it.
 */
export const signedText = (id: string, seconds: number, body: string): string => `${id}.${seconds}.${body}`;

/** Name and value of its three headers. */
export const webhookHeaders = (
  id: string,
  seconds: number,
  signature: string,
): Readonly<Record<string, string>> => ({
  "webhook-id": id,
  "webhook-timestamp": String(seconds),
  "webhook-signature": `v1,${signature}`,
});

/** How the secret is shown to whoever checks signatures. */
export const secretPrefix = "whsec_";
