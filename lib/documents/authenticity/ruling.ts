import type { PaperHash } from "@/lib/domain/authenticity/paper-hash";
import type { PublicStatus } from "@/lib/domain/authenticity/public-status";
import type { KeyList } from "@/lib/domain/seal/key-list";
import type { FileVerdict, Step } from "./verdict";

/** What is known beside the file itself. */
export type Around = {
  /** SHA-256 of the file, hex. */
  readonly fileSha256: string;
  readonly paperHash: PaperHash;
  /** Of the page that the code on paper leads to; null where none was opened. */
  readonly token: string | null;
  /** Where this check is served from; null offline, where nothing is served. */
  readonly host: string | null;
  /** What the laboratory says of the document; null where it was not or could not be asked. */
  readonly status: PublicStatus | null;
  readonly keys: KeyList;
};

export type Check = {
  readonly key: string;
  readonly label: string;
  readonly state: Step["state"];
  readonly text: string;
};

/** good: genuine, unchanged and in force; look: something is left for a person to decide; bad: do not rely on it. */
export type Ruling = {
  readonly kind: "good" | "look" | "bad";
  readonly title: string;
  readonly reason: string;
};

/** One thing that was looked at beside the file's own checks, and what follows if it is amiss. */
export type Ruled = { readonly check: Check; readonly ruling: Ruling | null };

export type Rule = (file: FileVerdict, around: Around) => Ruled | null;

export const ruled = (
  key: string,
  label: string,
  state: Step["state"],
  text: string,
  ruling: Ruling | null = null,
): Ruled => ({ check: { key, label, state, text }, ruling });
