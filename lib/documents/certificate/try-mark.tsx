import { Document, Page } from "@react-pdf/renderer";
import { documentFont } from "../fonts";
import { renderAlone } from "../render-alone";
import { AccreditationMark, type Mark } from "./accreditation-mark";

/** Whether a certificate could be printed with this image: it is tried before it can reach one. */
export const canPrintMark = async (
  bytes: Uint8Array,
  mediaType: "image/png" | "image/jpeg",
): Promise<boolean> => {
  const mark: Mark = { data: Buffer.from(bytes), format: mediaType === "image/png" ? "png" : "jpg" };
  try {
    const pdf = await renderAlone(
      <Document>
        <Page size="A4" style={{ fontFamily: documentFont() }}>
          <AccreditationMark mark={mark} number="" />
        </Page>
      </Document>,
    );
    return Buffer.from(pdf).includes("/Subtype /Image");
  } catch {
    return false;
  }
};
