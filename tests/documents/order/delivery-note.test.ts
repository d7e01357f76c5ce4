import { describe, expect, it } from "vitest";
import { renderDeliveryNote } from "@/lib/documents/order/delivery-note";
import { DeliveryNoteContent } from "@/lib/domain/shipment/content";
import { pdfPages } from "../../support/pdf-text";
import { sampleOffer } from "./sample-offer";

const { accreditation: _, ...laboratory } = sampleOffer().laboratory;
const sensor = (at: number, more: object = {}) => ({
  ...{ tag: `T-${String(at).padStart(6, "0")}`, serial: `HX-K-${4471 + at}`, typeLetter: "K" },
  certificates: [`C-2026-${String(at).padStart(4, "0")}`],
  ...more,
});
const note = (more: Partial<DeliveryNoteContent> = {}): DeliveryNoteContent => ({
  ...{ schema: 1, kind: "delivery-note", number: "S-2026-0001", on: "2026-03-05", laboratory },
  ...{ customer: "Brandt Heat Treatment GmbH", address: ["Gate 3, Slag Lane", "Eastmoor EM2 7TT"] },
  order: { number: "O-2026-0012", purchaseOrder: "PO-99120" },
  ...{ handedOver: "carrier", carrier: "Invented Parcels", reference: "IP 0093 41" },
  sensors: [sensor(1), sensor(2, { certificates: [] })],
  ...{ reason: "Broken lead", remaining: 3 },
  ...more,
});

describe("a delivery note", () => {
  it("says what is in the parcel, with which certificates, and what is still to come", async () => {
    const content = DeliveryNoteContent.parse(note());
    const text = (await pdfPages(await renderDeliveryNote(content))).join(" ").replace(/\s+/g, " ");
    for (const part of [
      ...["S-2026-0001", "O-2026-0012", "PO-99120", "Brandt Heat Treatment GmbH", "Gate 3, Slag Lane"],
      ...["HX-K-4472 K T-000001 C-2026-0001", "HX-K-4473 K T-000002 none", "Broken lead"],
      ...["With Invented Parcels, reference IP 0093 41", "3 of this order; they follow", "Signature"],
    ])
      expect(text).toContain(part);
  });

  it("breaks a long serial number within its column, and is the same bytes each time", async () => {
    const long = note({
      sensors: [sensor(1, { serial: "0123456789".repeat(6) })],
      handedOver: "in-person",
      remaining: 0,
    });
    const [one, two] = [await renderDeliveryNote(long), await renderDeliveryNote(long)];
    expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
    const text = (await pdfPages(one)).join(" ");
    expect(text).not.toContain("0123456789".repeat(6));
    expect(text.replace(/\s+/g, "")).toContain("0123456789".repeat(6));
    expect(text).toContain("Handed over in person");
    expect(text).toContain("Nothing of this order.");
  });

  it("goes over pages with two hundred sensors", async () => {
    const pages = await pdfPages(
      await renderDeliveryNote(note({ sensors: Array.from({ length: 200 }, (_one, at) => sensor(at)) })),
    );
    expect(pages.length).toBeGreaterThan(3);
    for (const tag of ["T-000000", "T-000100", "T-000199"]) expect(pages.join(" ")).toContain(tag);
  });
});
