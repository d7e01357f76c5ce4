import { hasEnded, standingSentence } from "@/lib/domain/certificate/standing";
import type { CertificateDocument } from "./download";

/** What lies in a ZIP of a certificate: the PDF, the DCC for machines where it has one, and what became of it where it stands no longer. */
export const zipEntries = ({ number, bytes, dcc, standing }: CertificateDocument) => [
  { name: `${number}.pdf`, bytes },
  ...(dcc ? [{ name: `${number}.xml`, bytes: dcc }] : []),
  ...(hasEnded(standing)
    ? [
        {
          name: `${number}-${standing.kind}.txt`,
          bytes: new TextEncoder().encode(`${standingSentence(number, standing)}\n`),
        },
      ]
    : []),
];
