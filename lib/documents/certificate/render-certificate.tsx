import { createHash } from "node:crypto";
import { catalogueSha256 } from "@/lib/domain/certificate/catalogue/catalogue";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { renderAlone } from "../render-alone";
import type { Mark } from "./accreditation-mark";
import { CertificateDocument } from "./certificate-document";
import { demandGlyphs } from "./demand-glyphs";
import { draftWords } from "./draft-words";
import { codeText, demandReadable } from "./page-code";
import { wordsOf } from "./words";

/**
 * Raised when the same content would give other bytes than before; stored beside each rendered file. The captions come
 * from the catalogue, so its hash is part of it: a document of other captions is never rendered anew and called changed.
 */
export const certificateRendererVersion = `3+${catalogueSha256.slice(0, 8)}`;

const sha256 = (bytes: Uint8Array): Uint8Array => createHash("sha256").update(bytes).digest();

type RenderOptions = {
  readonly draft: boolean;
  /** The bytes of the content's accreditation mark, where it has one. */
  readonly mark?: Uint8Array;
};

/** The image that the content names by its hash, or none; another one, or none where one is named, is a defect. */
const markOf = ({ laboratory }: CertificateContent, bytes: Uint8Array | undefined): Mark | null => {
  const named = laboratory.accreditationMark;
  if (!named) return null;
  if (!bytes || Buffer.from(sha256(bytes)).toString("hex") !== named.sha256)
    throw new Error("The accreditation mark is not the image that the certificate names.");
  return { data: Buffer.from(bytes), format: named.mediaType === "image/png" ? "png" : "jpg" };
};

/** Content in, PDF bytes out: the same bytes each time, on each machine. A draft carries a watermark on every page. */
export const renderCertificate = async (
  content: CertificateContent,
  { draft, mark }: RenderOptions,
): Promise<Uint8Array> => {
  const hash = Buffer.from(contentHash(content, sha256)).toString("hex");
  if (content.authenticity) demandReadable(codeText(content.authenticity.address, hash));
  await demandGlyphs(content);
  const paper = {
    content: draft ? draftWords(content) : content,
    contentHash: hash,
    draft,
    words: wordsOf(content),
  };
  return renderAlone(<CertificateDocument paper={paper} mark={markOf(content, mark)} />);
};
