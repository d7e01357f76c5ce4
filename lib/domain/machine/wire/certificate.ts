import { z } from "zod";
import { CertificateContent } from "../../certificate/content";

export const WireCertificateSummary = z.strictObject({
  number: z.string(),
  serial: z.string(),
  tag: z.string(),
  order: z.string(),
  purchaseOrder: z.string(),
  issuedOn: z.iso.date(),
  contentHash: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .describe("SHA-256 over the RFC 8785 form of the content."),
});

export const WireCertificatePage = z.strictObject({
  certificates: z.array(WireCertificateSummary),
  next: z.string().nullable().describe("Give it as `after` for the next page; null = this was the last."),
});

/** The content that was signed off, and its hash: whoever has both can check the one against the other. */
export const WireCertificate = z.strictObject({
  contentHash: z.string().regex(/^[0-9a-f]{64}$/),
  content: CertificateContent,
});

export type WireCertificatePage = z.output<typeof WireCertificatePage>;
export type WireCertificate = z.output<typeof WireCertificate>;
