export type Sealed = {
  readonly bytes: Uint8Array;
  /** SHA-256 of the sealing certificate (DER), lower-case hex; null: not sealed. */
  readonly fingerprint: string | null;
};

/**
 * Seals a finished PDF. Whoever holds the key makes one: the worker, and the first telling of the demonstration. The web
 * server has none.
 */
export type Sealer = (pdf: Uint8Array) => Promise<Sealed>;

/** Leaves the document as it is: it carries no seal, and is stored as one without. */
export const noSeal: Sealer = async (pdf) => ({ bytes: pdf, fingerprint: null });
