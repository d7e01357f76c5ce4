import type { ResultName } from "./result-name";

/** Something the signatory should see before the rest. `weight` only orders; it is never shown. */
export type ReviewException = {
  readonly weight: number;
  readonly kind:
    | "in-doubt"
    | "swap"
    | "reference-shift"
    | "junction-shift"
    | "earlier"
    | "finding"
    | "not-measured"
    | "conformity"
    | "large-error"
    | "references-differ"
    | "typed"
    | "gate"
    | "window"
    | "room"
    | "coverage";
  readonly subject: string;
  readonly text: string;
  /** The page where it is settled, where that is not a result. */
  readonly href?: string;
  /** The result it is about, or the first of them. */
  readonly point?: ResultName;
  /** Further results it is about. */
  readonly others?: readonly ResultName[];
  /** Said for completeness: no result has to be opened for it. */
  readonly isNote?: true;
};
