import { createHash } from "node:crypto";
import { renderToBuffer } from "@react-pdf/renderer";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { CertificateDocument } from "./certificate-document";

/** Raised when the same content would give other bytes than before; stored beside each rendered file. */
export const certificateRendererVersion = "1";

const sha256 = (bytes: Uint8Array): Uint8Array => createHash("sha256").update(bytes).digest();

/** Content in, PDF bytes out: the same bytes each time, on each machine. A draft carries a watermark on every page. */
export const renderCertificate = async (
  content: CertificateContent,
  options: { readonly draft: boolean },
): Promise<Uint8Array> => {
  const hash = Buffer.from(contentHash(content, sha256)).toString("hex");
  return renderToBuffer(<CertificateDocument content={content} contentHash={hash} draft={options.draft} />);
};
