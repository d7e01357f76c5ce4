import { canonical } from "@/lib/domain/audit/canonical";
import type { EvidenceFile } from "./evidence-file";

/** The one text of an evidence file: the same records give the same bytes. */
export const evidenceBytes = (file: EvidenceFile): Uint8Array<ArrayBuffer> =>
  new TextEncoder().encode(`${canonical(file)}\n`);
