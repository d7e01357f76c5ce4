import * as asn1js from "asn1js";
import { AlgorithmIdentifier, Certificate, getCrypto } from "pkijs";
import { der, octetsOf, oidOf, readDer } from "./asn1";
import { type Bytes, copyOf, isSame } from "./bytes";
import { attributeOf, type Cms, signedBytes } from "./cms";
import { oid } from "./identifiers";
import { namesCertificate, namesCertificateBySha1 } from "./signing-certificate";

const hashes: Readonly<Record<string, string>> = {
  [oid.sha256]: "SHA-256",
  [oid.sha384]: "SHA-384",
  [oid.sha512]: "SHA-512",
};

/** What of a signature holds; each is asked by itself, because each fails for another reason. */
export type CmsFindings = {
  readonly isDigest: boolean;
  readonly isSignature: boolean;
  readonly isSigningCertificate: boolean;
  /** DER. */
  readonly signer: Bytes;
};

/** The certificate that the signature names; undefined where it does not carry it. */
export const signerOf = ({ certificates, signerId }: Cms): Bytes | undefined =>
  certificates.find((one) => {
    const { issuer, serialNumber } = Certificate.fromBER(one);
    return isSame(der(new asn1js.Sequence({ value: [issuer.toSchema(), serialNumber] })), signerId);
  });

/** `data` is what is signed: the covered bytes of a file, or the content that lies inside. */
export const verifyCms = async (cms: Cms, data: Bytes, signer: Bytes): Promise<CmsFindings> => {
  const hash = hashes[cms.digestAlgorithm];
  const said = attributeOf(cms.signedAttributes, oid.messageDigest);
  const isDigest =
    hash !== undefined &&
    said !== undefined &&
    saysContentType(cms) &&
    isSame(
      copyOf(await globalThis.crypto.subtle.digest(hash, data)),
      octetsOf(readDer(said, "the digest"), "the digest"),
    );
  return {
    ...{ isDigest, signer },
    isSignature: hash !== undefined && (await isSignatureBy(cms, signer, hash)),
    isSigningCertificate: await saysSigner(cms, signer),
  };
};

/** RFC 5652, 11.1: the type that is signed is the type that is said. */
function saysContentType({ contentType, signedAttributes }: Cms): boolean {
  const said = attributeOf(signedAttributes, oid.contentType);
  return said !== undefined && oidOf(readDer(said, "the type"), "the type") === contentType;
}

async function saysSigner({ signedAttributes }: Cms, signer: Bytes): Promise<boolean> {
  const said = attributeOf(signedAttributes, oid.signingCertificateV2);
  if (said) return namesCertificate(said, signer);
  const old = attributeOf(signedAttributes, oid.signingCertificate);
  return old !== undefined && namesCertificateBySha1(old, signer);
}

async function isSignatureBy(cms: Cms, signer: Bytes, hash: string): Promise<boolean> {
  try {
    const { subjectPublicKeyInfo } = Certificate.fromBER(signer);
    const signature = new asn1js.OctetString({ valueHex: cms.signature });
    const algorithm = AlgorithmIdentifier.fromBER(cms.signatureAlgorithm);
    const signed = signedBytes(cms.signedAttributes);
    return await getCrypto(true).verifyWithPublicKey(
      signed,
      signature,
      subjectPublicKeyInfo,
      algorithm,
      hash,
    );
  } catch {
    // A signature that cannot even be read is none.
    return false;
  }
}
