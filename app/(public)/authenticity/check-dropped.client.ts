"use client";
import { sha256, toHex } from "@/lib/documents/authenticity/bytes";
import { type CarriedEvidence, carriedEvidence } from "@/lib/documents/authenticity/numbers/carried-evidence";
import type { FileVerdict } from "@/lib/documents/authenticity/verdict";
import { type WholeVerdict, wholeVerdict } from "@/lib/documents/authenticity/whole-verdict";
import { unpackStatus } from "@/lib/domain/authenticity/even-length";
import type { PaperHash } from "@/lib/domain/authenticity/paper-hash";
import type { PublicStatus } from "@/lib/domain/authenticity/public-status";
import { readAddress } from "@/lib/domain/authenticity/token";
import { KeyList } from "@/lib/domain/seal/key-list";
import { checkBeside } from "./check-beside.client";

const largestBytes = 100 * 1024 * 1024;

export type CheckedFile = {
  readonly verdict: FileVerdict;
  readonly whole: WholeVerdict;
  readonly evidence: CarriedEvidence;
};

type Given = {
  readonly token: string | null;
  readonly status: PublicStatus | null;
  readonly paperHash: PaperHash;
  readonly host: string;
};

const fetchKeys = async (): Promise<KeyList> => {
  const answer = await fetch("/.well-known/seal-keys.json", { credentials: "omit" }).catch(() => null);
  if (!answer?.ok)
    throw new Error("the laboratory’s list of keys could not be fetched. Try again in a minute.");
  return KeyList.parse(await answer.json());
};

/** Of the document that the file says it is; null where the laboratory was not, or could not be, asked. */
const fetchStatus = async (address: string | undefined, host: string): Promise<PublicStatus | null> => {
  const named = readAddress(address ?? "");
  if (!named || named.host !== host) return null;
  const answer = await fetch(`/api/authenticity/${named.token}`, { credentials: "omit" }).catch(() => null);
  return answer?.ok ? unpackStatus(await answer.text()) : null;
};

/** Everything about the file that a browser can find out. Only the token in it is ever sent, to ask how it stands. */
export const checkDropped = async (file: File, given: Given): Promise<CheckedFile> => {
  if (!globalThis.crypto?.subtle)
    throw new Error(
      "this browser offers no cryptography to pages that come over plain http. Open the site by https, or keep the offline check and open that.",
    );
  if (file.size > largestBytes)
    throw new Error(`it has ${Math.ceil(file.size / 1048576)} MB; at most 100 MB are read.`);
  const bytes = new Uint8Array(await file.arrayBuffer());
  const keys = await fetchKeys();
  const verdict = await checkBeside(bytes, { keys, now: new Date() });
  const address = verdict.content?.authenticity?.address;
  const isOfThisPage = given.token !== null && readAddress(address ?? "")?.token === given.token;
  const status = isOfThisPage ? given.status : await fetchStatus(address, given.host);
  const fileSha256 = toHex(await sha256(bytes));
  return {
    verdict,
    evidence: carriedEvidence(verdict),
    whole: wholeVerdict(verdict, { ...given, status, fileSha256, keys }),
  };
};
