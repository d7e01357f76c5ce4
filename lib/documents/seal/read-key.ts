import { Certificate, ECPublicKey, RSAPublicKey } from "pkijs";
import { type Bytes, copyOf, isSame } from "@/lib/documents/authenticity/bytes";
import { certificateFacts } from "@/lib/documents/authenticity/certificate-facts";
import { KeyFileRefused, readKeyFile } from "./key-file";
import type { SealKeyMaterial } from "./key-material";

/** Below it, RSA is at its end for documents that are kept (SOG-IS agreed mechanisms; from memory). */
const shortestRsa = 3000;

const subtle = () => globalThis.crypto.subtle;

/** Opens a PKCS #12 file. Throws `KeyFileRefused` with what is wrong and what to do. */
export const readKey = async (file: Uint8Array, passphrase: string): Promise<SealKeyMaterial> => {
  const { pkcs8, certificates } = await readKeyFile(file, passphrase);
  for (const certificate of certificates) {
    const opened = await keyOf(certificate, pkcs8);
    if (opened === undefined) continue;
    const facts = await certificateFacts(certificate);
    return { ...opened, certificate, facts, chain: chainOf(certificate, certificates) };
  }
  throw new KeyFileRefused("The file of the seal's key holds no certificate of that key.");
};

/** The private key, if this is its certificate; refused where it is and cannot be used. */
async function keyOf(
  der: Bytes,
  pkcs8: Bytes,
): Promise<Pick<SealKeyMaterial, "family" | "privateKey"> | undefined> {
  const certificate = Certificate.fromBER(der);
  const parsed = certificate.subjectPublicKeyInfo.parsedKey;
  const family = parsed instanceof RSAPublicKey ? "RSA" : parsed instanceof ECPublicKey ? "ECDSA" : undefined;
  if (family === undefined) return undefined;
  const algorithm =
    parsed instanceof ECPublicKey
      ? { name: "ECDSA", namedCurve: curveOf(parsed) }
      : { name: "RSASSA-PKCS1-v1_5", hash: "SHA-256" };
  const signing = { name: algorithm.name, hash: "SHA-256" };
  const probe = new TextEncoder().encode("whose key is this");
  const privateKey = await importKey(pkcs8, algorithm);
  if (privateKey === undefined) return undefined;
  const publicKey = await certificate.getPublicKey({ algorithm: { algorithm, usages: ["verify"] } });
  const signature = await subtle().sign(signing, privateKey, probe);
  if (!(await subtle().verify(signing, publicKey, signature, probe))) return undefined;
  const { modulusLength } = publicKey.algorithm as RsaKeyAlgorithm;
  if (family === "RSA" && modulusLength < shortestRsa)
    throw new KeyFileRefused(
      `An RSA key of ${modulusLength} bits is too short for documents that are kept: use 3072 bits or more, or ECDSA P-256.`,
    );
  return { family, privateKey };
}

function curveOf({ namedCurve }: ECPublicKey): string {
  if (/^P-(256|384|521)$/.test(namedCurve)) return namedCurve;
  throw new KeyFileRefused("The seal's key is of a curve that is not known here: use P-256, P-384 or P-521.");
}

type Importable = { readonly name: string; readonly namedCurve?: string; readonly hash?: string };

/** undefined where the key is of another family than the certificate. */
async function importKey(pkcs8: Bytes, algorithm: Importable): Promise<CryptoKey | undefined> {
  try {
    return await subtle().importKey("pkcs8", pkcs8, algorithm as EcKeyImportParams, false, ["sign"]);
  } catch {
    return undefined;
  }
}

/** Nearest first. A root that signed itself is left out: whoever trusts it has it. */
function chainOf(certificate: Bytes, all: readonly Bytes[]): readonly Bytes[] {
  const nameOf = (der: Bytes, of: "subject" | "issuer") =>
    copyOf(Certificate.fromBER(der)[of].toSchema().toBER());
  const isRoot = (der: Bytes) => isSame(nameOf(der, "subject"), nameOf(der, "issuer"));
  const chain: Bytes[] = [];
  for (let below = certificate; !isRoot(below); ) {
    const above = all.find((one) => isSame(nameOf(one, "subject"), nameOf(below, "issuer")));
    if (above === undefined || isRoot(above) || chain.includes(above)) break;
    chain.push(above);
    below = above;
  }
  return chain;
}
