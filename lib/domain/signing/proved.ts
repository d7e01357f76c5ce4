import type { SigningMeans } from "./decide-means";

/** Handed from the proof to the act it was given for, within one request, and never stored or sent. */
export type Proved = {
  readonly actId: string;
  readonly personId: string;
  readonly personSessionId: string;
  readonly means: SigningMeans;
  /** The session of signing that goes on; null: this signature opens one. */
  readonly signingSessionId: string | null;
};
