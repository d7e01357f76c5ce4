export const nonconformityKinds = ["nonconforming-work", "complaint"] as const;
export type NonconformityKind = (typeof nonconformityKinds)[number];
export const nonconformityKindLabels: Readonly<Record<NonconformityKind, string>> = {
  "nonconforming-work": "Nonconforming work",
  complaint: "Complaint",
};

/** In order; reopening begins anew. */
export const nonconformityStates = ["open", "examined", "corrected", "closed"] as const;
export type NonconformityState = (typeof nonconformityStates)[number];
export const nonconformityStateLabels: Readonly<Record<NonconformityState, string>> = {
  open: "Open",
  examined: "Effect examined",
  corrected: "Corrected",
  closed: "Closed",
};

export const subjectKinds = [
  "sensor",
  "run",
  "order",
  "certificate",
  "customer",
  "equipment",
  "calibration",
  "laboratory",
] as const;
export type SubjectKind = (typeof subjectKinds)[number];
export const subjectKindLabels: Readonly<Record<SubjectKind, string>> = {
  sensor: "Sensor",
  run: "Run",
  order: "Order",
  certificate: "Certificate",
  customer: "Customer",
  equipment: "Equipment",
  calibration: "Calibration of a standard",
  laboratory: "The laboratory",
};

/** ISO/IEC 17025 7.10.1 and 8.7, in the order in which they usually come. */
export const entryKinds = [
  "note",
  "effect",
  "hold",
  "correction",
  "customer-told",
  "cause",
  "corrective-action",
  "resumed",
  "closed",
  "reopened",
] as const;
export type EntryKind = (typeof entryKinds)[number];
export const entryKindLabels: Readonly<Record<EntryKind, string>> = {
  note: "Note",
  effect: "Effect on results",
  hold: "Work put on hold",
  correction: "Correction",
  "customer-told": "Customer told",
  cause: "Cause",
  "corrective-action": "Corrective action",
  resumed: "Work resumed",
  closed: "Closed",
  reopened: "Reopened",
};

export const impactClasses = ["none", "review", "significant", "recall", "not-stated"] as const;
export type ImpactClass = (typeof impactClasses)[number];
export const impactClassLabels: Readonly<Record<ImpactClass, string>> = {
  none: "No effect",
  review: "To be looked at",
  significant: "Significant: tell the customer",
  recall: "Recall the certificate",
  "not-stated": "Not known yet",
};
