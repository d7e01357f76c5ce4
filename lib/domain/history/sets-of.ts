import type { CertificateContent, CertificateRow } from "../certificate/content";

type Item = Pick<CertificateContent["item"], "serial" | "tag" | "typeLetter">;

type Part = {
  readonly item: Item;
  readonly performedTo: string;
  readonly rows: readonly CertificateRow[];
  readonly kind?: "as-received" | "after-anneal";
};

/** What is read of a certificate, whether it speaks of one sensor or, by its sets, of several. */
export type SpeakingContent = Part &
  Pick<CertificateContent, "number" | "issuedOn" | "order"> & {
    readonly sets?: readonly Part[] | undefined;
  };

/** One set of results of one sensor. */
export type ResultSet = {
  readonly certificate: string;
  readonly item: Item;
  readonly performedTo: string;
  /** Empty where there was no anneal to tell it from. */
  readonly set: "" | "as-received" | "after-anneal";
  readonly rows: readonly CertificateRow[];
};

export const setsOf = (content: SpeakingContent): readonly ResultSet[] =>
  (content.sets ?? [content]).map(({ item, performedTo, rows, kind }) => ({
    ...{ certificate: content.number, item, performedTo, rows },
    set: content.sets && kind ? kind : "",
  }));
