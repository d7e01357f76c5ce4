import { Document, Page } from "@react-pdf/renderer";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { documentFont } from "../fonts";
import { AccreditationMark, type Mark } from "./accreditation-mark";
import { Budgets } from "./budgets";
import { Closing } from "./closing";
import { DeviationFigure } from "./deviation-figure";
import { FunctionSections } from "./function-section";
import { PageFoot, PageHead, Watermark } from "./page-frame";
import { MethodAndConditions, Particulars } from "./particulars";
import { ConformityStatement, Results } from "./results";
import { Changes, LotSummary } from "./sets";
import { Standards } from "./standards";
import { styles } from "./styles";

type CertificateDocumentProps = {
  readonly content: CertificateContent;
  readonly contentHash: string;
  readonly draft: boolean;
  readonly mark: Mark | null;
};

/**
 * The dates inside the file come from the content, never from a clock: the same content gives the same bytes. A draft
 * has no date of issue yet; it takes the last day of the measurement.
 */
const fileDate = (content: CertificateContent): Date => {
  const issued = Date.parse(`${content.issuedOn}T00:00:00Z`);
  return new Date(Number.isNaN(issued) ? Date.parse(`${content.performedTo}T00:00:00Z`) : issued);
};

export const CertificateDocument = ({ content, contentHash, draft, mark }: CertificateDocumentProps) => (
  <Document
    title={`${content.title} ${content.number}`}
    author={content.laboratory.name}
    subject={`Thermocouple type ${content.item.typeLetter}, serial ${content.item.serial}`}
    creator="Emfolio"
    producer="Emfolio"
    language="en"
    creationDate={fileDate(content)}
    modificationDate={fileDate(content)}
  >
    <Page size="A4" style={[styles.page, { fontFamily: documentFont() }]}>
      <PageHead content={content} />
      <PageFoot content={content} contentHash={contentHash} />
      {mark ? <AccreditationMark mark={mark} number={content.laboratory.accreditationNumber ?? ""} /> : null}
      <Particulars content={content} />
      <Results content={content} />
      <Changes content={content} />
      <LotSummary content={content} />
      <ConformityStatement content={content} />
      {content.sets ? null : <DeviationFigure content={content} />}
      <FunctionSections content={content} />
      <Budgets content={content} />
      <MethodAndConditions content={content} />
      <Standards content={content} />
      <Closing content={content} contentHash={contentHash} />
      {draft ? <Watermark /> : null}
    </Page>
  </Document>
);
