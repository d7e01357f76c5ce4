import { checkFile } from "@/lib/documents/authenticity/check-file";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import { attachCertificate } from "@/lib/documents/issue/attach-certificate";

/** What makes a document anew and checks one. The same in, the same out: a caller may remember what came out. */
export type Makers = {
  readonly render: typeof renderCertificate;
  readonly attach: typeof attachCertificate;
  readonly check: typeof checkFile;
};

export const makers: Makers = { render: renderCertificate, attach: attachCertificate, check: checkFile };
