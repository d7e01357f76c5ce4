/** The gate's headings, in the order they are shown: at most eight, so that a person at the furnace reads them all. */
export const gateHeadings = [
  "range",
  "setpoints",
  "materials",
  "immersion",
  "load",
  "metal",
  "equipment",
  "same-day",
] as const;
export type GateHeading = (typeof gateHeadings)[number];

export const gateHeadingLabels: Readonly<Record<GateHeading, string>> = {
  range: "Range",
  setpoints: "Setpoints and exposure",
  materials: "Materials",
  immersion: "Immersion and fit",
  load: "Load and channels",
  metal: "Order and metal",
  equipment: "Equipment in date",
  "same-day": "Same-day checks",
};
