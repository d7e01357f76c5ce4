import type { MailState } from "./mail-state";
import type { MailKind } from "./types";

export const mailKindLabels: Readonly<Record<MailKind, string>> = {
  "due-digest": "What is due or out of date",
  quotation: "An offer to agree to",
  acknowledgment: "An order acknowledged",
  shipped: "Sensors on their way back",
  question: "A question to the customer",
  nonconformity: "Nonconforming work told to a customer",
  complaint: "A complaint received or answered",
  "order-requested": "Work requested by a customer",
  "request-received": "A request received",
  "order-accepted": "An order accepted",
  "order-changed": "An accepted order changed",
  "order-cancelled": "An order cancelled",
  "hold-ended": "What stood still is settled",
  "sensors-received": "Sensors arrived",
  "certificate-ready": "Certificates ready",
  "external-result-ready": "Results of another laboratory",
  "certificate-amended": "A certificate amended",
  "certificate-replaced": "A certificate replaced",
  "certificate-withdrawn": "A certificate withdrawn",
  "promise-changed": "A day promised, or another one",
  "recall-due": "Sensors due by the customer's interval",
  invitation: "An invitation to sign in",
  reset: "A link for a new password",
  "account-notice": "News of somebody's account",
};

export const mailStateLabels: Readonly<Record<MailState, string>> = {
  waiting: "Waiting",
  failing: "Trying again",
  "given-up": "Not sent",
  sent: "Sent",
};
