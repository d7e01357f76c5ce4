import type { CertificateDocument } from "./download";

/** What lies in a ZIP of a certificate: the PDF and, where it has one, the DCC for machines. */
export const zipEntries = ({ number, bytes, dcc }: CertificateDocument) => [
  { name: `${number}.pdf`, bytes },
  ...(dcc ? [{ name: `${number}.xml`, bytes: dcc }] : []),
];
