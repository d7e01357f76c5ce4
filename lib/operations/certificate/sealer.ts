export type Sealed = {
  readonly bytes: Uint8Array;
  /** SHA-256 of the sealing certificate (DER), lower-case hex. */
  readonly fingerprint: string;
};

/**
 * Seals a finished PDF. Whoever holds the key makes one: the worker, and the first telling of the demonstration. The web
 * server has none.
 */
export type Sealer = (pdf: Uint8Array) => Promise<Sealed>;
