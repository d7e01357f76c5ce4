"use client";
import type { CarriedEvidence } from "@/lib/documents/authenticity/numbers/carried-evidence";
import type { ComputedNumbers } from "@/lib/documents/authenticity/numbers/compute-numbers";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import type { Progress } from "@/lib/domain/certificate/recompute/recompute";

/** Lets the page draw and answer between two tables. */
const breathe = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

/** Computes every printed figure again, here in the browser; what computes is fetched when it is asked for. */
export const runRecomputation = async (
  document: { readonly content: CertificateContent; readonly evidence: CarriedEvidence },
  bytes: Uint8Array,
  onProgress: (progress: Progress) => void,
): Promise<ComputedNumbers> => {
  const { computeNumbers } = await import("@/lib/documents/authenticity/numbers/compute-numbers");
  return computeNumbers(document, bytes, (progress) => {
    onProgress(progress);
    return breathe();
  });
};
