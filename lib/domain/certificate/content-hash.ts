import { canonical } from "../audit/canonical";
import type { CertificateContent } from "./content";

export type Sha256 = (bytes: Uint8Array) => Uint8Array;

/** The one text form of a content: RFC 8785. This text is stored, hashed and hashed again by `rederive`. */
export const canonicalContent = (content: CertificateContent): string => canonical(content);

/** SHA-256 over the UTF-8 bytes of the canonical text. */
export const contentHash = (content: CertificateContent, sha256: Sha256): Uint8Array =>
  sha256(new TextEncoder().encode(canonicalContent(content)));
