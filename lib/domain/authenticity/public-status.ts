import { z } from "zod";

/** How a certificate stands towards whoever holds it; unknown: nothing of this laboratory has this token. */
export const PublicStanding = z.enum(["valid", "amended", "replaced", "withdrawn", "pending", "unknown"]);
export type PublicStanding = z.infer<typeof PublicStanding>;

const Linked = z.strictObject({ number: z.string(), address: z.string() }).nullable();

/** All that the laboratory says of a certificate to whoever shows its token. Never a result, a customer or a reason. */
export const PublicStatus = z.strictObject({
  standing: PublicStanding,
  /** That issued it, by the name it was signed with; of an unknown token, the one that answers. */
  laboratory: z.string(),
  number: z.string(),
  issuedOn: z.string(),
  /** The last characters of the serial; empty for a short one. */
  serialEnd: z.string(),
  /** Since when it is amended, replaced or withdrawn. */
  endedOn: z.string(),
  successor: Linked,
  predecessor: Linked,
  /** Of the PDF as it was issued, hex. */
  fileSha256: z.string(),
  /** SHA-256 over "TOKEN#HASH", hex: compares a content hash without giving it away. */
  contentProof: z.string(),
  /**
   * What the audit log has today at the place of this certificate's checkpoint, hex; empty where the log ends before it,
   * or the certificate carries none.
   */
  logHash: z.string(),
});
export type PublicStatus = z.infer<typeof PublicStatus>;
