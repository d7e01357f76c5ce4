import type { GateCode } from "./codes";

/**
 * No policy may set these aside: they poison people, spoil what cannot be mended, cannot be done at all, or take the
 * ground from under every result of the run (ISO/IEC 17025:2017, 6.4.4 and 6.4.6 for equipment; 6.5 for traceability).
 */
export const neverOverridable: ReadonlySet<GateCode> = new Set<GateCode>([
  "type-range",
  "furnace-range",
  "reference-range",
  "exposure",
  "lead-near-heat",
  "sheath-fumes",
  "platinum-unsheathed",
  "oxidises-in-air",
  "bore-too-narrow",
  "place-twice",
  "channel-twice",
  "item-twice",
  "too-many-places",
  "no-sensor",
  "no-reference",
  "junction-temperature",
  "order-not-accepted",
  "subcontracted",
  "furnace-in-service",
  "characterisation-in-date",
  "reference-in-date",
  "voltmeter-in-date",
  "scanner-in-date",
  "junction-in-date",
  "lead-in-date",
  "procedure-current",
  "wiring-in-doubt",
]);
