import { evidenceSumName, readEvidenceSum } from "@/lib/domain/certificate/evidence-file/evidence-sum";
import type { FileVerdict } from "../verdict";

/** The evidence under the seal; where it was not ordered, which file it is, lower-case hex. */
export type CarriedEvidence =
  | { readonly kind: "attached"; readonly bytes: Uint8Array }
  | { readonly kind: "named"; readonly sha256: string }
  | { readonly kind: "none" };

export const carriedEvidence = ({ attachments }: Pick<FileVerdict, "attachments">): CarriedEvidence => {
  const bytesOf = (wanted: string) => attachments.find(({ name }) => name === wanted)?.bytes;
  const bytes = bytesOf("evidence.json");
  if (bytes) return { kind: "attached", bytes };
  const sum = bytesOf(evidenceSumName);
  const sha256 = sum ? readEvidenceSum(new TextDecoder().decode(sum)) : null;
  return sha256 === null ? { kind: "none" } : { kind: "named", sha256 };
};
