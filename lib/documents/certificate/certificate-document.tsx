import { Document, Page } from "@react-pdf/renderer";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { documentFont } from "../fonts";
import type { Mark } from "./accreditation-mark";
import { PageFoot, PageHead, Watermark } from "./page-frame";
import type { Paper } from "./paper";
import { partsOf } from "./parts";
import { styles } from "./styles";

/**
 * The dates inside the file come from the content, never from a clock: the same content gives the same bytes. A draft
 * has no date of issue yet; it takes the last day of the measurement.
 */
const fileDate = (content: CertificateContent): Date => {
  const issued = Date.parse(`${content.issuedOn}T00:00:00Z`);
  return new Date(Number.isNaN(issued) ? Date.parse(`${content.performedTo}T00:00:00Z`) : issued);
};

type CertificateDocumentProps = { readonly paper: Paper; readonly mark: Mark | null };

/**
 * PDF/A-3b: what is archived, with files attached. What is fixed on each page comes at the page's ends in the order of
 * reading: head before the text, foot after it.
 */
export const CertificateDocument = ({ paper, mark }: CertificateDocumentProps) => {
  const { content, words } = paper;
  const date = fileDate(content);
  return (
    <Document
      title={`${content.title} ${content.number}`}
      author={content.laboratory.name}
      subject={`Thermocouple type ${content.item.typeLetter}, serial ${content.item.serial}`}
      creator="Emfolio"
      producer="Emfolio"
      conformance="PDF/A-3b"
      language={words.language}
      creationDate={date}
      modificationDate={date}
    >
      {partsOf(paper, mark).map(({ key, part }) => (
        <Page key={key} size="A4" style={[styles.page, { fontFamily: documentFont() }]}>
          <Watermark paper={paper} />
          <PageHead paper={paper} />
          {part}
          <PageFoot paper={paper} />
        </Page>
      ))}
    </Document>
  );
};
