import type { CertificateContent } from "@/lib/domain/certificate/content";
import type { Words } from "./words";

/** What every part of the document is drawn from. */
export type Paper = {
  readonly content: CertificateContent;
  /** Lower-case hex. */
  readonly contentHash: string;
  readonly words: Words;
  readonly draft: boolean;
};

export type OnPaper = { readonly paper: Paper };

/** 7.8.1.3: what a simplified certificate leaves out can be had from the laboratory. */
export const isSimplified = ({ content }: Paper): boolean => content.form === "simplified";
