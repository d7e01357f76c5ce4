import { z } from "zod";
import { CertificateContent } from "../../certificate/content";
import type { Standing } from "../../certificate/standing";

/** What became of it. Its document stays as it was, whatever this says. */
export const WireStanding = z.strictObject({
  state: z.enum(["pending", "valid", "amended", "replaced", "withdrawn"]),
  successor: z.string().nullable().describe("Number of the certificate that counts instead."),
  reason: z.string().nullable(),
  since: z.iso.datetime().nullable(),
});

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
  standing: WireStanding,
});

export const WireCertificatePage = z.strictObject({
  certificates: z.array(WireCertificateSummary),
  next: z.string().nullable().describe("Give it as `after` for the next page; null = this was the last."),
});

/** What a list tells of a content: the rest of it, up to the figures of forty sensors, is not looked through for that. */
export const ToldContent = z.object({
  ...{ number: z.string(), issuedOn: z.string() },
  item: z.object({ serial: z.string(), tag: z.string() }),
  order: z.object({ number: z.string(), purchaseOrder: z.string() }),
});

/** The content that was signed off, and its hash: whoever has both can check the one against the other. */
export const WireCertificate = z.strictObject({
  contentHash: z.string().regex(/^[0-9a-f]{64}$/),
  content: CertificateContent,
  standing: WireStanding,
});

export const wireStandingOf = (standing: Standing): z.output<typeof WireStanding> => ({
  state: standing.kind,
  successor: "successor" in standing ? standing.successor : null,
  reason: "reason" in standing ? standing.reason : null,
  since: "at" in standing ? standing.at : null,
});

export type WireCertificatePage = z.output<typeof WireCertificatePage>;
export type WireCertificate = z.output<typeof WireCertificate>;
