import type { PartState } from "./parts-of";

export const partLabels: Readonly<Record<PartState, string>> = {
  waiting: "Waiting",
  "not-to-be": "Not measured",
  planned: "In a run",
  measured: "Measured",
  invalid: "Invalid",
  "not-reached": "Not reached",
  "in-review": "In review",
  kept: "Kept",
  "set-aside": "Set aside",
  reported: "Reported",
  withdrawn: "Withdrawn",
};

/** The same, said to the customer. */
export const plainPartLabels: Readonly<Record<PartState, string>> = {
  waiting: "Waiting",
  "not-to-be": "Not measured",
  planned: "Being measured",
  measured: "Measured",
  invalid: "No valid result",
  "not-reached": "Not measured",
  "in-review": "Being checked",
  kept: "Measured",
  "set-aside": "To be measured again",
  reported: "On the certificate",
  withdrawn: "Certificate withdrawn: not to be used",
};
