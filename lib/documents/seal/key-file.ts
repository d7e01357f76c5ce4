import {
  AuthenticatedSafe,
  CertBag,
  Certificate,
  EncryptedContentInfo,
  EncryptedData,
  PFX,
  PKCS8ShroudedKeyBag,
  PrivateKeyInfo,
  SafeBag,
  SafeContents,
} from "pkijs";
import { type Bytes, copyOf } from "@/lib/documents/authenticity/bytes";

/** Object identifiers of RFC 7292, 4.2, and RFC 8018. */
const bag = {
  shroudedKey: "1.2.840.113549.1.12.10.1.2",
  certificate: "1.2.840.113549.1.12.10.1.3",
  x509: "1.2.840.113549.1.9.22.1",
} as const;
const pbes2 = "1.2.840.113549.1.5.13";

/** The one thing to know of a file that cannot be used, with the remedy. */
export class KeyFileRefused extends Error {
  constructor(message: string) {
    super(message);
    this.name = "KeyFileRefused";
  }
}

const legacyRemedy =
  "Write it anew with: openssl pkcs12 -legacy -in OLD.p12 -out key.pem && openssl pkcs12 -export -in key.pem -out NEW.p12, and delete key.pem.";

export type KeyFileContents = { readonly pkcs8: Bytes; readonly certificates: readonly Bytes[] };

/** Our own files are locked by 256 random bits, which need no stretching; OpenSSL's count. */
const iterationCount = 2048;
const encryption = {
  contentEncryptionAlgorithm: { name: "AES-CBC", length: 256 },
  hmacHashAlgorithm: "SHA-256",
  iterationCount,
} as const;

/** A PKCS #12 file (RFC 7292) with one key and its certificate: PBES2, AES-256, MAC over SHA-256. */
export const writeKeyFile = async (given: {
  readonly pkcs8: Bytes;
  readonly certificate: Bytes;
  readonly passphrase: string;
}): Promise<Bytes> => {
  const password = passwordOf(given.passphrase);
  const key = new PKCS8ShroudedKeyBag({ parsedValue: PrivateKeyInfo.fromBER(given.pkcs8) });
  await key.makeInternalValues({ password, ...encryption, contentEncryptionAlgorithm: aes() });
  const certificate = new CertBag({ parsedValue: Certificate.fromBER(given.certificate) });
  const bagOf = (bagId: string, bagValue: PKCS8ShroudedKeyBag | CertBag) => ({
    privacyMode: 0,
    value: new SafeContents({ safeBags: [new SafeBag({ bagId, bagValue })] }),
  });
  const authenticatedSafe = new AuthenticatedSafe({
    parsedValue: {
      safeContents: [bagOf(bag.shroudedKey, key), bagOf(bag.certificate, certificate)],
    },
  });
  await authenticatedSafe.makeInternalValues({ safeContents: [{}, {}] });
  const file = new PFX({ parsedValue: { integrityMode: 0, authenticatedSafe } });
  await file.makeInternalValues({
    ...{ password, iterations: iterationCount },
    ...{ pbkdf2HashAlgorithm: { name: "SHA-256" }, hmacHashAlgorithm: "SHA-256" },
  });
  return copyOf(file.toSchema().toBER());
};

const aes = () =>
  ({ ...encryption.contentEncryptionAlgorithm }) as unknown as AesCbcParams & AesDerivedKeyParams;

/** Throws `KeyFileRefused` with what is wrong and what to do. */
export const readKeyFile = async (bytes: Uint8Array, passphrase: string): Promise<KeyFileContents> => {
  const password = passwordOf(passphrase);
  const file = fileOf(bytes);
  try {
    await file.parseInternalValues({ password, checkIntegrity: true });
  } catch {
    throw new KeyFileRefused(
      "The file of the seal's key does not open with its passphrase: check SEAL_KEY_PASSPHRASE.",
    );
  }
  const bags = await bagsOf(file, password);
  const keys = bags.flatMap(({ bagValue }) => (bagValue instanceof PKCS8ShroudedKeyBag ? [bagValue] : []));
  const [key] = keys;
  if (key === undefined || keys.length !== 1)
    throw new KeyFileRefused("The file of the seal's key must hold exactly one private key.");
  if (key.encryptionAlgorithm.algorithmId !== pbes2)
    throw new KeyFileRefused(`The key in its file is locked by an outdated cipher. ${legacyRemedy}`);
  const certificates = bags.flatMap(({ bagValue }) =>
    bagValue instanceof CertBag && bagValue.certId === bag.x509 ? [certificateOf(bagValue)] : [],
  );
  return { pkcs8: await unlocked(key, password), certificates };
};

async function unlocked(key: PKCS8ShroudedKeyBag, password: ArrayBuffer): Promise<Bytes> {
  const { encryptionAlgorithm, encryptedData } = key;
  const encryptedContentInfo = new EncryptedContentInfo({
    contentEncryptionAlgorithm: encryptionAlgorithm,
    encryptedContent: encryptedData,
  });
  return copyOf(await new EncryptedData({ encryptedContentInfo }).decrypt({ password }));
}

function fileOf(bytes: Uint8Array): PFX {
  try {
    return PFX.fromBER(copyOf(bytes));
  } catch {
    throw new KeyFileRefused(
      "The file of the seal's key is no PKCS #12 file: openssl pkcs12 -export -inkey key.pem -in certificate.pem -out key.p12 makes one.",
    );
  }
}

async function bagsOf(file: PFX, password: ArrayBuffer): Promise<readonly SafeBag[]> {
  const safe = file.parsedValue?.authenticatedSafe;
  if (!safe) throw new KeyFileRefused("The file of the seal's key is empty.");
  try {
    await safe.parseInternalValues({ safeContents: safe.safeContents.map(() => ({ password })) });
  } catch {
    throw new KeyFileRefused(`The file of the seal's key is locked by an outdated cipher. ${legacyRemedy}`);
  }
  const contents = (safe.parsedValue as { safeContents: readonly { value: SafeContents }[] }).safeContents;
  return contents.flatMap(({ value }) => value.safeBags);
}

function certificateOf({ parsedValue }: CertBag): Bytes {
  return copyOf((parsedValue as Certificate).toSchema(false).toBER());
}

/** RFC 7292, B.1, spells a passphrase in UTF-16 in one place and lets writers differ in the other. */
function passwordOf(passphrase: string): ArrayBuffer {
  if (!/^[\x20-\x7e]+$/.test(passphrase))
    throw new KeyFileRefused(
      "The passphrase of the seal's key may hold the letters, digits and signs of an English keyboard only (SEAL_KEY_PASSPHRASE).",
    );
  return new TextEncoder().encode(passphrase).buffer as ArrayBuffer;
}
