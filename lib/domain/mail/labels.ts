import type { MailState } from "./mail-state";
import type { MailKind } from "./types";

export const mailKindLabels: Readonly<Record<MailKind, string>> = {
  "due-digest": "What is due or out of date",
  quotation: "An offer to agree to",
  acknowledgment: "An order acknowledged",
  shipped: "Sensors on their way back",
};

export const mailStateLabels: Readonly<Record<MailState, string>> = {
  waiting: "Waiting",
  failing: "Trying again",
  "given-up": "Not sent",
  sent: "Sent",
};
