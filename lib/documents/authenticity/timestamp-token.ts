import { Certificate, ExtKeyUsage, TSTInfo } from "pkijs";
import { Malformed } from "./asn1";
import { type Bytes, copyOf, isSame, sha256, toHex } from "./bytes";
import { type Cms, composeCms, readCms } from "./cms";
import { oid } from "./identifiers";
import { signerOf, verifyCms } from "./verify-cms";

/** A timestamp token that holds by itself; whether its authority is to be believed is another question. */
export type TimestampToken = {
  readonly genTime: Date;
  /** SHA-256 of the authority's certificate, hex. */
  readonly fingerprint: string;
  readonly certificate: Bytes;
  /** DER of the nonce's INTEGER; null where the request had none. */
  readonly nonce: Bytes | null;
  /** Written byte for byte as we write it, so that no byte of it may differ unnoticed. */
  readonly isPlain: boolean;
};

/** Throws `Malformed`, in words, where the token is not of this imprint or does not hold. */
export const readTimestampToken = async (bytes: Uint8Array, imprint: Uint8Array): Promise<TimestampToken> => {
  const cms = readCms(bytes, "the timestamp");
  if (cms.contentType !== oid.timestampInfo || cms.content === null)
    throw new Malformed("the timestamp holds no time");
  const info = TSTInfo.fromBER(cms.content);
  const { hashAlgorithm, hashedMessage } = info.messageImprint;
  if (hashAlgorithm.algorithmId !== oid.sha256 || !isSame(hashedMessage.valueBlock.valueHexView, imprint))
    throw new Malformed("the timestamp is of something else");
  const certificate = signerOf(cms);
  if (certificate === undefined)
    throw new Malformed("the timestamp does not carry its authority's certificate");
  const findings = await verifyCms(cms, cms.content, certificate);
  if (!findings.isDigest || !findings.isSignature || !findings.isSigningCertificate)
    throw new Malformed("the timestamp's own signature does not hold");
  demandAuthority(Certificate.fromBER(certificate), info.genTime);
  return {
    ...{ genTime: info.genTime, certificate },
    fingerprint: toHex(await sha256(certificate)),
    nonce: info.nonce ? copyOf(info.nonce.toBER(false)) : null,
    isPlain: isPlain(cms, bytes, certificate),
  };
};

function isPlain(cms: Cms, bytes: Uint8Array, certificate: Bytes): boolean {
  const only = cms.certificates.length === 1 && cms.certificates[0] === certificate;
  return only && isSame(composeCms(cms), bytes);
}

/** RFC 3161, 2.3: for timestamps alone, said as critical; and in force at the time it told. */
function demandAuthority({ extensions, notBefore, notAfter }: Certificate, genTime: Date): void {
  const usage = extensions?.find(({ extnID }) => extnID === oid.extendedKeyUsage);
  const purposes = usage?.parsedValue instanceof ExtKeyUsage ? usage.parsedValue.keyPurposes : [];
  if (!usage?.critical || purposes.length !== 1 || purposes[0] !== oid.timeStamping)
    throw new Malformed("the timestamp is signed by a certificate that may not tell the time");
  if (genTime < notBefore.value || genTime > notAfter.value)
    throw new Malformed("the timestamp's authority was not in force at the time it told");
}
