import { Certificate, ECPublicKey, type RelativeDistinguishedNames, RSAPublicKey } from "pkijs";
import { copyOf, isSame, sha256, toHex } from "./bytes";

/** What a certificate says of itself, for a list, a page or a check. */
export type CertificateFacts = {
  /** SHA-256 of the DER bytes, hex. */
  readonly fingerprint: string;
  /** e.g. "ECDSA P-256", "RSA 3072". */
  readonly algorithm: string;
  readonly subject: string;
  readonly issuer: string;
  readonly notBefore: Date;
  readonly notAfter: Date;
  /** It signed itself: nobody else vouches for it. */
  readonly isSelfIssued: boolean;
};

const names: Readonly<Record<string, string>> = {
  "2.5.4.3": "CN",
  "2.5.4.6": "C",
  "2.5.4.7": "L",
  "2.5.4.8": "ST",
  "2.5.4.10": "O",
  "2.5.4.11": "OU",
  "1.2.840.113549.1.9.1": "E",
};

/** Throws where the bytes are no certificate. */
export const certificateFacts = async (der: Uint8Array): Promise<CertificateFacts> => {
  const certificate = Certificate.fromBER(copyOf(der));
  return {
    fingerprint: toHex(await sha256(der)),
    algorithm: algorithmOf(certificate),
    subject: nameOf(certificate.subject),
    issuer: nameOf(certificate.issuer),
    notBefore: certificate.notBefore.value,
    notAfter: certificate.notAfter.value,
    isSelfIssued: isSame(
      copyOf(certificate.subject.toSchema().toBER()),
      copyOf(certificate.issuer.toSchema().toBER()),
    ),
  };
};

function algorithmOf({ subjectPublicKeyInfo }: Certificate): string {
  const key = subjectPublicKeyInfo.parsedKey;
  if (key instanceof ECPublicKey) return `ECDSA ${key.namedCurve}`;
  if (key instanceof RSAPublicKey) {
    const modulus = key.modulus.valueBlock.valueHexView;
    const first = modulus.findIndex((byte) => byte !== 0);
    return `RSA ${8 * (modulus.length - first)}`;
  }
  return subjectPublicKeyInfo.algorithm.algorithmId;
}

function nameOf(name: RelativeDistinguishedNames): string {
  const parts = name.typesAndValues.map(
    ({ type, value }) => `${names[type] ?? type}=${String(value.valueBlock.value)}`,
  );
  return parts.join(", ") || "(no name)";
}
