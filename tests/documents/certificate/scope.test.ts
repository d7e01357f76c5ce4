import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import { canPrintMark } from "@/lib/documents/certificate/try-mark";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { someOutsideScope } from "@/lib/domain/certificate/texts";
import { pdfPages } from "@/tests/support/pdf-text";
import { png } from "@/tests/support/png";
import { sampleContent } from "./sample-content";

const mark = png(60, 30);
const sha256 = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest("hex");
const rows = sampleContent.rows.map((row, index) =>
  row.state === "measured"
    ? { ...row, scope: index === 0 ? ("outside" as const) : ("inside" as const) }
    : row,
);
const content: CertificateContent = {
  ...sampleContent,
  laboratory: {
    ...sampleContent.laboratory,
    accreditation: "Accredited by an invented body",
    accreditationNumber: "INV 0000",
    accreditationMark: { sha256: sha256(mark), mediaType: "image/png" },
  },
  rows,
  scopeStatement: someOutsideScope,
};
const bytes = await renderCertificate(content, { draft: false, mark });
const text = (await pdfPages(bytes)).join("\n").replace(/\s+/g, " ");
const images = (pdf: Uint8Array) => Buffer.from(pdf).toString("latin1").split("/Subtype /Image").length - 1;

describe("a certificate with points outside the scope, on paper", () => {
  it("puts the sign beside these rows and no other, in the results and in the statement of conformity", () => {
    const setpoint = rows[0]?.setpoint ?? "";
    expect(text.split(`${setpoint} †`).length - 1).toBe(content.conformity ? 2 : 1);
    // The footnote begins with it too.
    expect(text.split("†").length - 1).toBe(content.conformity ? 3 : 2);
    expect(text).toContain(someOutsideScope);
  });

  it("prints wording, number and mark, the number beside the mark and under Accreditation", () => {
    expect(text).toContain("Accredited by an invented body");
    expect(text).toContain("Number INV 0000");
    expect(images(bytes)).toBe(1);
  });

  it("gives the same bytes again, and refuses another image or none in the mark's place", async () => {
    const again = await renderCertificate(content, { draft: false, mark });
    expect(Buffer.from(again).equals(Buffer.from(bytes))).toBe(true);
    await expect(renderCertificate(content, { draft: false })).rejects.toThrow(/accreditation mark/);
    await expect(renderCertificate(content, { draft: false, mark: png(61, 30) })).rejects.toThrow(
      /accreditation mark/,
    );
  });

  it("prints nothing of it where the content claims nothing, even if an image is handed over", async () => {
    const plain = await renderCertificate(sampleContent, { draft: false, mark });
    expect(images(plain)).toBe(0);
    expect((await pdfPages(plain)).join(" ")).not.toMatch(/†|scope of accreditation/);
  });

  it("tries an image before it can reach a certificate", async () => {
    expect(await canPrintMark(mark, "image/png")).toBe(true);
    expect(await canPrintMark(mark.slice(0, 40), "image/png")).toBe(false);
  });
});
