import type { CertificateBundle } from "@/lib/domain/certificate/bundle";
import { composeBundle } from "@/lib/domain/certificate/compose-bundle";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { ok, type Result } from "@/lib/domain/refusal";
import { loadBundle } from "../certificate/load-bundle";
import type { Tx } from "../in-scope";
import type { ReviewRun } from "./load-review-run";

export type Reviewed = { readonly bundle: CertificateBundle; readonly content: CertificateContent };

/** What one certificate of these sensors would say, before it has a number: what is looked at, hashed and signed. */
export const reviewedContent = async (
  tx: Tx,
  review: ReviewRun,
  sensorIds: readonly string[],
): Promise<Result<Reviewed>> => {
  const bundle = await loadBundle(tx, review, sensorIds);
  if (!bundle.ok) return bundle;
  const content = composeBundle(bundle.value, null);
  return content.ok ? ok({ bundle: bundle.value, content: content.value }) : content;
};
