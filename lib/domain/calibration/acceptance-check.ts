export const checkKeys = ["identity", "issuer", "range", "uncertainty", "traceability", "criterion"] as const;
export type CheckKey = (typeof checkKeys)[number];

/** What was found from the records: whoever accepts looks at the certificate and confirms it, or does not. */
export type AcceptanceCheck = {
  readonly key: CheckKey;
  readonly question: string;
  /** not-known: the records say nothing to hold it against, so only the person's own look decides. */
  readonly answer: "yes" | "no" | "not-known";
  readonly finding: string;
};

/** A "no" to one of these can be accepted with a reason; the others keep a calibration from being used at all. */
const reasonable: ReadonlySet<CheckKey> = new Set(["range", "uncertainty"]);

export const mayBeReasoned = (key: CheckKey): boolean => reasonable.has(key);
