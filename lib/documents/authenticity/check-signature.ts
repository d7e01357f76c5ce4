import { Certificate } from "pkijs";
import type { KeyList, ListedKey } from "@/lib/domain/seal/key-list";
import { type Bytes, fromBase64, isSame, sha256, toHex } from "./bytes";
import { type Cms, composeCms, readCms } from "./cms";
import type { StepFinding } from "./findings";
import { oid } from "./identifiers";
import type { LocatedSeal } from "./locate-seal";
import type { StepKey } from "./verdict";
import { signerOf, verifyCms } from "./verify-cms";

export type CheckedSignature = {
  readonly findings: readonly StepFinding[];
  readonly fingerprint: string | null;
  /** undefined where the check ends here. */
  readonly signature?: {
    readonly cms: Cms;
    readonly certificate: Certificate;
    /** null where the key is on no list given. */
    readonly key: ListedKey | null;
  };
};

/** Digest, signature value, signing certificate, issuer: what is computed, and whose it is. */
export const checkSignature = async (
  { covered, container }: LocatedSeal,
  keys: KeyList,
): Promise<CheckedSignature> => {
  const cms = readCms(container, "the seal");
  const signer = signerOf(cms);
  if (signer === undefined || cms.contentType !== oid.data || cms.content !== null)
    return ended(
      [],
      null,
      "signature",
      "FORMAT_FAILURE",
      "The seal does not carry the certificate that it names.",
    );
  const fingerprint = toHex(await sha256(signer));
  const { isDigest, isSignature, isSigningCertificate } = await verifyCms(cms, covered, signer);
  if (!isDigest)
    return ended([], fingerprint, "digest", "HASH_FAILURE", "The file was changed after it was sealed.");
  const digest = passed("digest", "The file’s digest is the one that was sealed: no byte was changed.");
  if (!isSignature) {
    const text =
      "The seal’s signature does not belong to the certificate in it: the seal was changed or made up.";
    return ended([digest], fingerprint, "signature", "SIG_CRYPTO_FAILURE", text);
  }
  const signature = passed("signature", "The signature was made by the key of the certificate in the seal.");
  const before = [digest, signature];
  if (!isSigningCertificate) {
    const text = "The seal was made for another certificate than the one it carries.";
    return ended(before, fingerprint, "signing-certificate", "SIG_CONSTRAINTS_FAILURE", text);
  }
  const key = keys.keys.find((one) => one.purpose === "seal" && one.fingerprint === fingerprint) ?? null;
  if (key !== null && !isAsSealed(cms, container, signer, key)) {
    const text = "The seal carries something beside the signature that the laboratory did not put there.";
    return ended(before, fingerprint, "signing-certificate", "FORMAT_FAILURE", text);
  }
  const bound = passed(
    "signing-certificate",
    "The seal names its own certificate, which cannot be exchanged for another.",
  );
  return {
    findings: [...before, bound, issuerFinding(key, keys, fingerprint)],
    ...{ fingerprint, signature: { cms, certificate: Certificate.fromBER(signer), key } },
  };
};

const passed = (key: StepKey, text: string): StepFinding => ({ key, state: "passed", text });

function ended(
  before: readonly StepFinding[],
  fingerprint: string | null,
  key: StepKey,
  indication: "HASH_FAILURE" | "FORMAT_FAILURE" | "SIG_CRYPTO_FAILURE" | "SIG_CONSTRAINTS_FAILURE",
  text: string,
): CheckedSignature {
  const failed: StepFinding = {
    key,
    state: "failed",
    text,
    against: { verdict: "total-failed", indication },
  };
  return { fingerprint, findings: [...before, failed] };
}

function issuerFinding(key: ListedKey | null, keys: KeyList, fingerprint: string): StepFinding {
  if (key === null)
    return {
      ...{ key: "issuer", state: "unknown" },
      text: `Whose seal this is is not known here: its key is not on the list of ${keys.laboratory}. Compare its fingerprint with one that you have from the laboratory by another way: ${fingerprint}`,
      against: { verdict: "indeterminate", indication: "NO_SIGNING_CERTIFICATE_FOUND" },
    };
  const vouching =
    key.origin === "self-issued"
      ? " The laboratory made that key itself; that it is this laboratory’s, only its own list says."
      : "";
  return passed("issuer", `The key is on the list of ${keys.laboratory}: ${key.subject}.${vouching}`);
}

/** Not one byte of the container but the timestamp may differ from what the laboratory's own sealing writes. */
function isAsSealed(cms: Cms, container: Bytes, signer: Bytes, { chain }: ListedKey): boolean {
  const expected = [signer, ...chain.flatMap((one) => fromBase64(one) ?? [])];
  return (
    cms.certificates.length === expected.length &&
    cms.certificates.every((one, index) => isSame(one, expected[index] ?? new Uint8Array())) &&
    cms.digestAlgorithm === oid.sha256 &&
    cms.unsignedAttributes.every(({ type }) => type === oid.timestampToken) &&
    isSame(composeCms(cms), container)
  );
}
