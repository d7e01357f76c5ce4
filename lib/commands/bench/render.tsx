import { Document, Page, renderToBuffer, Text } from "@react-pdf/renderer";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import { documentFont } from "@/lib/documents/fonts";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { compare, type Figure } from "./measure";

const OneLine = () => (
  <Document>
    <Page size="A4" style={{ fontFamily: documentFont() }}>
      <Text>One line.</Text>
    </Page>
  </Document>
);

export const benchRender = (content: CertificateContent): Promise<Figure> =>
  compare(
    {
      name: "Certificate render",
      ours: "renderCertificate: tables, figure, page numbers",
      baseline: "one line of text on one page, same library and font",
    },
    async () => {
      await renderCertificate(content, { draft: false });
    },
    async () => {
      await renderToBuffer(<OneLine />);
    },
  );
