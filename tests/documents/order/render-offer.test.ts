import { describe, expect, it } from "vitest";
import { renderOffer } from "@/lib/documents/order/render-offer";
import { OfferContent } from "@/lib/domain/quotation/content";
import { pdfPages } from "../../support/pdf-text";
import { sampleOffer } from "./sample-offer";

describe("an offer as a paper", () => {
  it("says what the customer has to know before agreeing, with each figure as it is in the content", async () => {
    const content = OfferContent.parse(sampleOffer());
    const [first = "", ...others] = await pdfPages(await renderOffer(content));
    const text = [first, ...others].join(" ").replace(/\s+/g, " ");
    for (const part of [
      ...["Q-2026-0007", "Brandt Heat Treatment GmbH", "Ines Höfle", "O-2026-0012", "express"],
      ...["1000 °C", "about 1.8 °C", "cannot be decided", "† outside", "1832 °F", "two sets of results"],
      ...["Guarded acceptance", "less 1 times the uncertainty U", "ITS-90"],
      ...["12 345.50", "25.00", "36", "Sum, without tax", "Until 2026-04-30", "Promised for 2026-03-20"],
      ...["Demonstration, all data invented", "page 1 of"],
    ])
      expect(text).toContain(part);
  });

  it("has the same bytes each time, and other bytes for another content", async () => {
    const [one, two] = [await renderOffer(sampleOffer()), await renderOffer(sampleOffer())];
    expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
    const other = await renderOffer(
      sampleOffer({ kind: "acknowledgment", number: "O-2026-0012-A1", validUntil: null }),
    );
    expect(Buffer.from(one).equals(Buffer.from(other))).toBe(false);
    const text = (await pdfPages(other)).join(" ");
    expect(text).toContain("Order acknowledgment");
    expect(text).not.toContain("You agree");
  });

  it("keeps a long order whole over its pages", async () => {
    const [line] = sampleOffer().lines;
    if (!line) throw new Error("the sample has a line");
    const lines = Array.from({ length: 30 }, (_, at) => ({ ...line, position: at + 1 }));
    const pages = await pdfPages(await renderOffer(sampleOffer({ lines })));
    expect(pages.length).toBeGreaterThan(3);
    for (const [at, page] of pages.entries()) expect(page).toContain(`page ${at + 1} of ${pages.length}`);
    for (const { position } of lines) expect(pages.join(" ")).toContain(`Line ${position}: 12 thermocouples`);
  });
});
