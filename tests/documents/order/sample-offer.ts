import type { OfferContent } from "@/lib/domain/quotation/content";

const point = (setpoint: string, more: object = {}) => ({
  setpoint,
  tolerance: "± 1.50 °C",
  expected: "about 1.2 °C",
  scope: "inside" as const,
  conformity: "decidable" as const,
  ...more,
});

/** An invented offer of a laboratory that does not exist. */
export const sampleOffer = (more: Partial<OfferContent> = {}): OfferContent => ({
  schema: 1,
  kind: "quotation",
  number: "Q-2026-0007",
  on: "2026-03-04",
  laboratory: {
    name: "Harrow Vale Calibration",
    addressLines: ["4 Kiln Lane", "Harrow Vale HV3 9TQ"],
    contact: "desk@harrowvale.example",
    accreditation: "Demonstration, not accredited: this laboratory is invented.",
    isDemo: true,
  },
  customer: {
    name: "Brandt Heat Treatment GmbH",
    addressLines: ["Ofenweg 12", "59999 Musterstadt"],
    contactName: "Ines Höfle",
  },
  order: { number: "O-2026-0012", purchaseOrder: "PO-99120", urgency: "express" },
  method:
    "Comparison with reference thermocouples in a tube furnace, by Comparison in the tube furnace, revision 2. Temperatures are on the International Temperature Scale of 1990 (ITS-90).",
  rule: {
    name: "Guarded acceptance (guard band w = 1 × U)",
    plain:
      "A point passes when its error lies within the tolerance less 1 times the uncertainty U, and fails when it lies beyond the tolerance by as much. Between, the statement is conditional, and says so.",
    agreement: "",
  },
  lines: [
    {
      position: 1,
      typeLetter: "K",
      quantity: 12,
      group: "zone 3, load thermocouples",
      description: "Mineral-insulated, 3 mm, 500 mm long, bare tails. Metal sheath.",
      specification: "IEC 60584-1:2013, tolerance class 1",
      extras: ["table of corrections every 10 °C", "Used from 300 to 900 °C."],
      points: [
        point("300 °C"),
        point("500 °C", { tolerance: "± 2.00 °C" }),
        point("1000 °C", { expected: "about 1.8 °C", conformity: "not-decidable" }),
      ],
    },
    {
      position: 2,
      typeLetter: "S",
      quantity: 1,
      group: "",
      description: "0.5 mm wires, alumina twin bore. Closed alumina sheath.",
      specification: "",
      extras: [
        "measured as received, annealed at 1100 °C for 2 h, measured again: two sets of results on one certificate",
      ],
      points: [
        point("1832 °F", { tolerance: "none asked for", scope: "outside", conformity: "no-question" }),
      ],
    },
  ],
  remarks: [
    "Outside the laboratory’s scope of accreditation, and marked so on the certificate: line 2: 1832 °F.",
    "With the uncertainty to expect, conformity cannot be decided; the certificate will say so: line 1: 1000 °C.",
  ],
  price: {
    currency: "GBP",
    total: 1_234_550,
    lines: [
      {
        key: "calibration",
        per: "point",
        title: "Calibration point",
        position: 1,
        quantity: 36,
        unitAmount: 2500,
        amount: 90_000,
      },
      {
        key: "calibration",
        per: "sensor",
        title: "Set-up and certificate",
        position: 1,
        quantity: 12,
        unitAmount: 1250,
        amount: 15_000,
      },
      {
        key: "express",
        per: "order",
        title: "Express",
        position: null,
        quantity: 1,
        unitAmount: 1_129_550,
        amount: 1_129_550,
      },
    ],
  },
  validUntil: "2026-04-30",
  delivery: "Promised for 2026-03-20.",
  termsHash: "0".repeat(64),
  ...more,
});
