import * as asn1js from "asn1js";
import { type Block, childrenOf, der, Malformed, octetsOf, oidOf, readDer } from "./asn1";
import { type Bytes, copyOf, isSame, sha256 } from "./bytes";
import { oid } from "./identifiers";

/** SigningCertificateV2 of one certificate: RFC 5035, 3; without a hash algorithm it is SHA-256. */
export const signingCertificateV2 = async (certificate: Uint8Array): Promise<Bytes> => {
  const hash = new asn1js.OctetString({ valueHex: await sha256(certificate) });
  const one = new asn1js.Sequence({ value: [hash] });
  return der(new asn1js.Sequence({ value: [new asn1js.Sequence({ value: [one] })] }));
};

const hashes: Readonly<Record<string, string>> = {
  [oid.sha256]: "SHA-256",
  [oid.sha384]: "SHA-384",
  [oid.sha512]: "SHA-512",
};

/** Whether the first certificate that the attribute names is this one. */
export const namesCertificate = async (attribute: Uint8Array, certificate: Uint8Array): Promise<boolean> => {
  const [hash, ...rest] = firstOf(attribute);
  const isNamed = hash !== undefined && !(hash instanceof asn1js.OctetString);
  const algorithm = isNamed ? hashes[oidOf(childrenOf(hash, what)[0], what)] : "SHA-256";
  if (algorithm === undefined)
    throw new Malformed("the certificate is named by a hash that is not known here");
  return isDigest(algorithm, certificate, octetsOf(isNamed ? rest[0] : hash, what));
};

/** The older form, SHA-1 (RFC 2634, 5.4), which many timestamp authorities still write. */
export const namesCertificateBySha1 = async (
  attribute: Uint8Array,
  certificate: Uint8Array,
): Promise<boolean> => isDigest("SHA-1", certificate, octetsOf(firstOf(attribute)[0], what));

const what = "the signing certificate";

function firstOf(attribute: Uint8Array): readonly Block[] {
  const [list] = childrenOf(readDer(attribute, what), what);
  return childrenOf(childrenOf(list, what)[0], what);
}

async function isDigest(algorithm: string, bytes: Uint8Array, expected: Uint8Array): Promise<boolean> {
  return isSame(copyOf(await globalThis.crypto.subtle.digest(algorithm, copyOf(bytes))), expected);
}
