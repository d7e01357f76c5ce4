type Place = {
  /** Where it stands on the certificate. */
  readonly words: string;
  /** Where it is typed, and can be typed otherwise. */
  readonly remedy: string;
};

const atCustomer = "Change it at the customer.";
const atOrder = "Change it at the order.";
const atSensor = "Change it at the sensor.";
const atEquipment = "Change it at the equipment.";
const atRun = "Change it at the run or its furnace.";
const atReview = "Write it anew where it was written.";

/** By the beginning of the path within a content; the longest that fits counts. */
const places: Readonly<Record<string, Place>> = {
  laboratory: { words: "the laboratory's particulars", remedy: "Change them under Laboratory." },
  "customer.name": { words: "the customer's name", remedy: atCustomer },
  "customer.addressLines": { words: "the customer's address", remedy: atCustomer },
  "customer.contact": { words: "the customer's contact", remedy: atCustomer },
  "order.purchaseOrder": { words: "the purchase order", remedy: atOrder },
  "item.serial": { words: "the serial number", remedy: atSensor },
  "item.construction": { words: "the construction of the item", remedy: "Change it on the order's line." },
  "item.condition": { words: "the condition at receipt", remedy: atSensor },
  "item.checks": { words: "the electrical checks at receipt", remedy: atSensor },
  "item.material": { words: "lot, roll and end", remedy: atSensor },
  item: { words: "what is said of the item", remedy: atSensor },
  run: { words: "what is said of the run", remedy: atRun },
  method: { words: "the method", remedy: atRun },
  conditions: { words: "the conditions", remedy: atRun },
  rows: { words: "the table of results", remedy: atOrder },
  standards: { words: "the standards and instruments", remedy: atEquipment },
  traceabilityStatement: { words: "the statement of traceability", remedy: atEquipment },
  conformity: { words: "the agreed decision rule", remedy: atOrder },
  formStatement: { words: "the agreement to the short form", remedy: atOrder },
  deviations: { words: "the deviations from the method", remedy: atReview },
  exclusions: { words: "what was set aside", remedy: atReview },
  thermalHistory: { words: "the thermal history", remedy: atSensor },
  opinions: { words: "the opinions and interpretations", remedy: atReview },
  statements: { words: "the statements", remedy: atReview },
  "amends.changes": { words: "what is changed", remedy: "Drop what was asked for, and ask anew." },
  amends: { words: "the reason of the change", remedy: "Drop what was asked for, and ask anew." },
  externalResults: { words: "the external provider", remedy: "Change it at the provider." },
  performedBy: { words: "the name of who performed it", remedy: "Change it under Staff." },
  authorisedBy: { words: "the signatory's name", remedy: "Change it under Staff." },
};

/** What a set says of itself stands where the certificate's own would. */
const withoutSet = (path: string): string => path.replace(/^sets\.\d+\./, "");

/** A place within a content, in plain words: "customer.addressLines.0" is the customer's address. */
export const placeInWords = (path: string): Place => {
  const inner = withoutSet(path);
  const names = inner.split(".");
  for (let length = names.length; length > 0; length -= 1) {
    const known = places[names.slice(0, length).join(".")];
    if (known) return known;
  }
  return { words: `“${inner.replaceAll(".", " ")}”`, remedy: atReview };
};
