import type { CertificateContent, CertificateSet } from "@/lib/domain/certificate/content";

/** One item, one set, one run: what one `measurementResult` speaks of. */
export type MeasuredSet = Pick<
  CertificateSet,
  "item" | "run" | "conditions" | "rows" | "standards" | "function"
> & {
  /** null where the certificate carries one set alone. */
  readonly kind: CertificateSet["kind"] | null;
  /** Of ids in the document: unique, and the same for the same content. */
  readonly prefix: string;
};

export const measuredSets = (content: CertificateContent): readonly MeasuredSet[] =>
  content.sets?.map((set, at) => ({ ...set, prefix: `set${at + 1}_` })) ?? [
    { ...content, kind: null, prefix: "set1_" },
  ];
