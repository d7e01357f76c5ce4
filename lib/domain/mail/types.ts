/** Why a message is written. */
export const mailKinds = [
  "due-digest",
  "quotation",
  "acknowledgment",
  "shipped",
  "question",
  "nonconformity",
  "complaint",
  "order-requested",
  "request-received",
  "order-accepted",
  "order-changed",
  "order-cancelled",
  "hold-ended",
  "sensors-received",
  "certificate-ready",
  "external-result-ready",
  "certificate-amended",
  "certificate-replaced",
  "certificate-withdrawn",
  "promise-changed",
  "recall-due",
  "invitation",
  "reset",
  "account-notice",
] as const;
export type MailKind = (typeof mailKinds)[number];

/** How one attempt went: sent, failed and coming back by itself, or failed for the last time. */
export const mailOutcomes = ["sent", "failed", "given-up"] as const;
export type MailOutcome = (typeof mailOutcomes)[number];

/** To a mail server, or as a file in a folder where no mail server is set. */
export const mailTransports = ["smtp", "file"] as const;
export type MailTransportKind = (typeof mailTransports)[number];

/** What leaves: one recipient, plain text. */
export type Letter = {
  readonly id: string;
  readonly messageId: string;
  readonly recipient: string;
  readonly subject: string;
  readonly body: string;
  /** The date of its header, the same at each attempt. */
  readonly writtenAt: Date;
};
