import * as asn1js from "asn1js";
import {
  AttributeTypeAndValue,
  BasicConstraints,
  Certificate,
  Extension,
  ExtKeyUsage,
  type RelativeDistinguishedNames,
  Time,
} from "pkijs";
import { type Bytes, copyOf } from "@/lib/documents/authenticity/bytes";
import { oid } from "@/lib/documents/authenticity/identifiers";
import { writeKeyFile } from "./key-file";

const validYears = 3;

/** An outside authority's clock may be behind ours: a seal must not seem older than its key. */
const clockAllowanceMs = 3_600_000;

export type KeyToMake = {
  readonly purpose: "seal" | "timestamp";
  /** The laboratory, as it stands in the certificate's common name. */
  readonly name: string;
  readonly at: Date;
  readonly passphrase: string;
};

/**
 * A key of the laboratory's own, ECDSA P-256, with a certificate that vouches for itself, as a PKCS #12 file's bytes.
 * Enough to show that a document is unchanged and which laboratory's key sealed it; who the laboratory is, nobody else
 * confirms by it.
 */
export const makeKey = async ({ purpose, name, at, passphrase }: KeyToMake): Promise<Bytes> => {
  const pair = await globalThis.crypto.subtle.generateKey({ name: "ECDSA", namedCurve: "P-256" }, true, [
    "sign",
    "verify",
  ]);
  const certificate = new Certificate();
  certificate.version = 2;
  certificate.serialNumber = new asn1js.Integer({ valueHex: randomSerial() });
  for (const whose of [certificate.subject, certificate.issuer]) addName(whose, purpose, name);
  certificate.notBefore = new Time({
    type: 0,
    value: wholeSecond(new Date(at.getTime() - clockAllowanceMs)),
  });
  certificate.notAfter = new Time({ type: 0, value: yearsLater(wholeSecond(at), validYears) });
  await certificate.subjectPublicKeyInfo.importKey(pair.publicKey);
  certificate.extensions = extensions(purpose);
  await certificate.sign(pair.privateKey, "SHA-256");
  const der = copyOf(certificate.toSchema(true).toBER());
  const pkcs8 = copyOf(await globalThis.crypto.subtle.exportKey("pkcs8", pair.privateKey));
  return writeKeyFile({ pkcs8, certificate: der, passphrase });
};

/** 16 octets, positive (RFC 5280, 4.1.2.2). */
function randomSerial(): Bytes {
  const bytes = globalThis.crypto.getRandomValues(new Uint8Array(16));
  bytes[0] = ((bytes[0] ?? 0) & 0x3f) | 0x40;
  return bytes;
}

/** X.520: a common name has at most 64 signs. */
const longestName = 64;

/** Two certificates of one laboratory, told apart by name too. */
function addName(whose: RelativeDistinguishedNames, purpose: KeyToMake["purpose"], name: string): void {
  const rest = purpose === "timestamp" ? " (time)" : "";
  const value = new asn1js.Utf8String({ value: `${name.slice(0, longestName - rest.length)}${rest}` });
  whose.typesAndValues.push(new AttributeTypeAndValue({ type: oid.commonName, value }));
}

function extensions(purpose: KeyToMake["purpose"]): Extension[] {
  const extension = (extnID: string, critical: boolean, value: asn1js.BaseBlock) =>
    new Extension({ extnID, critical, extnValue: value.toBER(false) });
  // RFC 5280, 4.2.1.3: digitalSignature and nonRepudiation, the first two bits.
  const usage = new asn1js.BitString({ valueHex: Uint8Array.of(0b1100_0000), unusedBits: 6 });
  const plain = [
    extension(oid.basicConstraints, true, new BasicConstraints({ cA: false }).toSchema()),
    extension(oid.keyUsage, true, usage),
  ];
  if (purpose === "seal") return plain;
  // RFC 3161, 2.3: this usage alone, and critical.
  const stamping = new ExtKeyUsage({ keyPurposes: [oid.timeStamping] }).toSchema();
  return [...plain, extension(oid.extendedKeyUsage, true, stamping)];
}

const wholeSecond = (at: Date): Date => new Date(1000 * Math.floor(at.getTime() / 1000));

function yearsLater(at: Date, years: number): Date {
  const later = new Date(at);
  later.setUTCFullYear(at.getUTCFullYear() + years);
  return later;
}
