import * as asn1js from "asn1js";
import { Certificate, createCMSECDSASignature, IssuerAndSerialNumber } from "pkijs";
import { der } from "@/lib/documents/authenticity/asn1";
import { type Bytes, copyOf } from "@/lib/documents/authenticity/bytes";
import { type Cms, signedBytes } from "@/lib/documents/authenticity/cms";
import { oid } from "@/lib/documents/authenticity/identifiers";
import { signingCertificateV2 } from "@/lib/documents/authenticity/signing-certificate";
import type { SealKeyMaterial } from "./key-material";

/** What each family of keys writes. PKCS #1 v1.5 because every reader checks it; ECDSA as RFC 5758 has it. */
const algorithms = {
  RSA: { name: "RSASSA-PKCS1-v1_5", identifier: oid.sha256WithRsa, parameters: [new asn1js.Null()] },
  ECDSA: { name: "ECDSA", identifier: oid.sha256WithEcdsa, parameters: [] },
} as const;

/**
 * One signature by one key, as CAdES wants it (ETSI EN 319 122-1; in a PDF, EN 319 142-1): content type, digest and
 * signing certificate are signed; a signing time is not, because the PDF's own dictionary says it.
 */
export const signCms = async (
  { contentType, content, digest }: Pick<Cms, "contentType" | "content"> & { readonly digest: Bytes },
  key: SealKeyMaterial,
): Promise<Cms> => {
  const certificate = Certificate.fromBER(key.certificate);
  const { issuer, serialNumber } = certificate;
  const algorithm = algorithms[key.family];
  const signedAttributes = [
    { type: oid.contentType, value: der(new asn1js.ObjectIdentifier({ value: contentType })) },
    { type: oid.messageDigest, value: der(new asn1js.OctetString({ valueHex: digest })) },
    { type: oid.signingCertificateV2, value: await signingCertificateV2(key.certificate) },
  ];
  return {
    ...{ contentType, content, signedAttributes },
    certificates: [key.certificate, ...key.chain],
    signerId: der(new IssuerAndSerialNumber({ issuer, serialNumber }).toSchema()),
    digestAlgorithm: oid.sha256,
    signatureAlgorithm: der(
      new asn1js.Sequence({
        value: [new asn1js.ObjectIdentifier({ value: algorithm.identifier }), ...algorithm.parameters],
      }),
    ),
    signature: await sign(key, signedBytes(signedAttributes)),
    unsignedAttributes: [],
  };
};

async function sign({ family, privateKey }: SealKeyMaterial, bytes: Bytes): Promise<Bytes> {
  const { name } = algorithms[family];
  const signature = await globalThis.crypto.subtle.sign({ name, hash: "SHA-256" }, privateKey, bytes);
  // WebCrypto gives r and s side by side, CMS wants them as a sequence.
  return copyOf(family === "ECDSA" ? createCMSECDSASignature(signature) : signature);
}
