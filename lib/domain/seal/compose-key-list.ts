import { type Ending, endingThatCounts } from "./ending";
import { KeyList } from "./key-list";

export type StoredKey = {
  readonly fingerprint: string;
  readonly purpose: string;
  readonly origin: string;
  readonly algorithm: string;
  readonly subject: string;
  /** DER. */
  readonly certificate: Uint8Array;
  readonly chain: readonly Uint8Array[];
  readonly notBefore: Date;
  readonly notAfter: Date;
  readonly takenUpAt: Date;
  readonly endings: readonly Ending[];
};

export type Base64 = (bytes: Uint8Array) => string;

/** What the laboratory publishes of its keys, in the order in which they were taken up. */
export const composeKeyList = (
  laboratory: string,
  keys: readonly StoredKey[],
  now: Date,
  base64: Base64,
): KeyList =>
  KeyList.parse({
    ...{ format: "emfolio-key-list", version: 1, laboratory, issuedAt: now.toISOString() },
    keys: keys.map(({ certificate, chain, endings, ...key }) => {
      const ending = endingThatCounts(endings);
      return {
        fingerprint: key.fingerprint,
        ...{ purpose: key.purpose, origin: key.origin, algorithm: key.algorithm, subject: key.subject },
        ...{ certificate: base64(certificate), chain: chain.map(base64) },
        notBefore: key.notBefore.toISOString(),
        notAfter: key.notAfter.toISOString(),
        takenUpAt: key.takenUpAt.toISOString(),
        ending: ending && {
          ...{ kind: ending.kind, reason: ending.reason },
          effectiveAt: ending.effectiveAt.toISOString(),
        },
      };
    }),
  });
