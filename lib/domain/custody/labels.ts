/** The ways in which a sensor changes hands or places, ISO/IEC 17025 7.4.1. */
export const custodyKinds = [
  "received",
  "stored",
  "to-furnace",
  "from-furnace",
  "to-provider",
  "from-provider",
  "packed",
  "handed-over",
  "disposed",
] as const;
export type CustodyKind = (typeof custodyKinds)[number];

export const custodyLabels: Readonly<Record<CustodyKind, string>> = {
  received: "Received",
  stored: "Put into storage",
  "to-furnace": "To the furnace",
  "from-furnace": "Out of the furnace",
  "to-provider": "Sent to a provider",
  "from-provider": "Back from a provider",
  packed: "Packed",
  "handed-over": "Handed over",
  disposed: "Disposed of",
};

/** It is not in the house after these. */
const outside: ReadonlySet<CustodyKind> = new Set(["to-provider", "handed-over", "disposed"]);

export const isInHouse = (kind: CustodyKind): boolean => !outside.has(kind);
