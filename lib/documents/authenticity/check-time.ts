import type { Certificate } from "pkijs";
import type { KeyList, ListedKey } from "@/lib/domain/seal/key-list";
import { Malformed } from "./asn1";
import { sha256 } from "./bytes";
import { attributeOf, type Cms } from "./cms";
import type { StepFinding } from "./findings";
import { oid } from "./identifiers";
import { readTimestampToken, type TimestampToken } from "./timestamp-token";
import { inWords } from "./words";

export type CheckedTime = {
  readonly finding: StepFinding;
  /** What the timestamp says. */
  readonly timestampedAt: Date | null;
  /** The same, if its authority may be believed here: the seal was there by then. */
  readonly attested: Date | null;
};

/** A visitor's clock may be slow. */
const clockAllowanceMs = 300_000;

/** The timestamp over the signature value: of this seal, whole, and told by whom. */
export const checkTimestamp = async (cms: Cms, keys: KeyList, now: Date): Promise<CheckedTime> => {
  const bytes = attributeOf(cms.unsignedAttributes, oid.timestampToken);
  if (bytes === undefined)
    return unattested("The seal carries no timestamp: when it was made, only its own clock says.", null);
  let token: TimestampToken;
  try {
    token = await readTimestampToken(bytes, await sha256(cms.signature));
  } catch (error) {
    const why = error instanceof Malformed ? error.message : "the timestamp cannot be read";
    return broken(`The seal’s timestamp does not hold: ${why}.`);
  }
  const { genTime } = token;
  const authority = keys.keys.find(
    ({ purpose, fingerprint }) => purpose === "timestamp" && fingerprint === token.fingerprint,
  );
  if (authority === undefined)
    return unattested(
      `A timestamp authority that is not known here says that the seal was there on ${inWords(genTime)}.`,
      genTime,
    );
  if (authority.origin === "self-issued" && !token.isPlain)
    return broken("The seal’s timestamp carries something that the authority did not put there.");
  if (authority.ending?.kind === "revoked" && genTime >= new Date(authority.ending.effectiveAt))
    return unattested("The timestamp’s authority had been revoked when it told the time.", genTime);
  if (genTime.getTime() > now.getTime() + clockAllowanceMs)
    return unattested(
      `The timestamp tells of ${inWords(genTime)}, which is yet to come by this machine’s clock.`,
      genTime,
    );
  const whose =
    authority.origin === "self-issued" ? "the laboratory’s own timestamp authority" : authority.subject;
  const text = `The seal was there on ${inWords(genTime)}, says ${whose}.`;
  return { finding: { key: "timestamp", state: "passed", text }, timestampedAt: genTime, attested: genTime };
};

const unattested = (text: string, timestampedAt: Date | null): CheckedTime => ({
  finding: { key: "timestamp", state: "unknown", text },
  ...{ timestampedAt, attested: null },
});

const broken = (text: string): CheckedTime => ({
  finding: {
    ...{ key: "timestamp", state: "failed", text },
    against: { verdict: "total-failed", indication: "SIG_CRYPTO_FAILURE" },
  },
  ...{ timestampedAt: null, attested: null },
});

/** Was the certificate in force when the seal was made: at the attested time, or else now. */
export const checkValidity = (
  { notBefore, notAfter }: Certificate,
  attested: Date | null,
  now: Date,
): StepFinding => {
  const at = attested ?? now;
  const key = "validity";
  const verdict = attested === null ? "indeterminate" : "total-failed";
  if (at < notBefore.value) {
    const text = `The seal’s certificate begins on ${inWords(notBefore.value)}, after the time of the seal.`;
    return { key, state: "failed", text, against: { verdict, indication: "NOT_YET_VALID" } };
  }
  if (at <= notAfter.value) {
    const since =
      now > notAfter.value ? ` It ended on ${inWords(notAfter.value)}, after the seal was made.` : "";
    const text = `The seal’s certificate was in force ${attested ? "when the seal was made" : "now, at the time of this check"}.${since}`;
    return { key, state: "passed", text };
  }
  if (attested !== null) {
    const text = `The seal was made after its certificate had ended on ${inWords(notAfter.value)}.`;
    return { key, state: "failed", text, against: { verdict, indication: "EXPIRED" } };
  }
  const text = `The seal’s certificate ended on ${inWords(notAfter.value)}, and no timestamp that can be believed here shows that the seal was made before.`;
  return { key, state: "unknown", text, against: { verdict, indication: "NO_POE" } };
};

/** Had the laboratory given up the key when the seal was made. */
export const checkRevocation = (key: ListedKey | null, attested: Date | null): StepFinding => {
  const step = "revocation";
  if (key === null)
    return { key: step, state: "unknown", text: "Whether this key was revoked is not known here." };
  const { ending } = key;
  if (ending === null)
    return { key: step, state: "passed", text: "The laboratory has not revoked the key, says its list." };
  const from = new Date(ending.effectiveAt);
  if (attested !== null && attested < from) {
    const how = ending.kind === "revoked" ? "revoked the key from" : "retired the key on";
    return {
      key: step,
      state: "passed",
      text: `The laboratory ${how} ${inWords(from)}, after this seal was made.`,
    };
  }
  if (ending.kind === "retired") return afterRetirement(attested, from);
  const text =
    attested === null
      ? `The laboratory revoked the key from ${inWords(from)}, and no timestamp that can be believed here shows that the seal was made before.`
      : `The laboratory revoked the key from ${inWords(from)} (${ending.reason}), and the seal was made after that.`;
  return attested === null
    ? { key: step, state: "unknown", text, against: { verdict: "indeterminate", indication: "NO_POE" } }
    : { key: step, state: "failed", text, against: { verdict: "total-failed", indication: "REVOKED" } };
};

function afterRetirement(attested: Date | null, from: Date): StepFinding {
  if (attested === null)
    return {
      ...{ key: "revocation", state: "passed" },
      text: `The laboratory retired the key on ${inWords(from)} in good order: what it sealed stays good.`,
    };
  return {
    ...{ key: "revocation", state: "unknown" },
    text: `The laboratory says that it no longer used this key from ${inWords(from)}; the seal was made after that. Ask the laboratory.`,
    against: { verdict: "indeterminate", indication: "SIG_CONSTRAINTS_FAILURE" },
  };
}
