import type { ListedKey } from "@/lib/domain/seal/key-list";
import { aroundRules } from "./around-rules";
import type { Around, Check, Ruling } from "./ruling";
import type { FileVerdict, Step } from "./verdict";

export type WholeVerdict = Ruling & {
  readonly checks: readonly Check[];
  /** The key that the seal was made with, where the list has it. */
  readonly sealKey: ListedKey | null;
};

const labels: Readonly<Record<Step["key"], string>> = {
  pdf: "A PDF file",
  "one-seal": "One seal",
  coverage: "The seal covers the whole file",
  digest: "Not a byte was changed",
  signature: "The seal’s signature",
  "signing-certificate": "Bound to its certificate",
  issuer: "A key of the laboratory",
  timestamp: "Timestamp",
  validity: "The key was in force",
  revocation: "The key was not revoked",
  content: "The content inside",
};

const onFile = (file: FileVerdict): readonly Ruling[] => {
  const { reason } = file;
  if (file.verdict === "total-failed") return [{ kind: "bad", title: "Do not rely on this file", reason }];
  if (file.indication === "NOT_THE_PDF")
    return [{ kind: "look", title: "Not checked: this is not the PDF", reason }];
  if (file.verdict === "indeterminate") return [{ kind: "look", title: "It could not be decided", reason }];
  return [];
};

const passed = (file: FileVerdict, sealKey: ListedKey | null, { status }: Around): Ruling => {
  const own =
    sealKey?.origin === "self-issued"
      ? " The key vouches for itself: compare its fingerprint with the one the laboratory gave you."
      : "";
  return {
    kind: "good",
    title: status ? "Genuine, unchanged and in force" : "Genuine and unchanged",
    reason: `${file.reason}${own}`,
  };
};

/** What makes a file worthless comes before what leaves it open. */
const worst = (rulings: readonly Ruling[]): Ruling | undefined =>
  rulings.find(({ kind }) => kind === "bad") ?? rulings[0];

/**
 * All that can be said of a file to whoever dropped it: the file's own checks, whether it is the document of the paper,
 * the place it is checked at, and how it stands today.
 */
export const wholeVerdict = (file: FileVerdict, around: Around): WholeVerdict => {
  const sealKey =
    around.keys.keys.find(
      ({ fingerprint, purpose }) => purpose === "seal" && fingerprint === file.fingerprint,
    ) ?? null;
  const looked = aroundRules.flatMap((rule) => rule(file, around) ?? []);
  const rulings = [...onFile(file), ...looked.flatMap(({ ruling }) => ruling ?? [])];
  const own = file.steps.map(({ key, state, text }) => ({ key, label: labels[key], state, text }));
  return {
    ...(worst(rulings) ?? passed(file, sealKey, around)),
    checks: [...own, ...looked.map(({ check }) => check)],
    sealKey,
  };
};
