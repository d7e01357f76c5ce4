"use client";
import { useEffect, useState } from "react";
import { Notice } from "@/app/_ui/notice";
import { sha256, toHex } from "@/lib/documents/authenticity/bytes";
import type { PaperHash } from "@/lib/domain/authenticity/paper-hash";
import type { PublicStatus } from "@/lib/domain/authenticity/public-status";

type Compared = {
  readonly status: PublicStatus;
  readonly token: string;
  /** null until the page knows its own address. */
  readonly paperHash: PaperHash | null;
};

export type PaperOutcome = "same" | "other" | "no-cryptography" | null;

const compare = async ({ status, token, paperHash }: Compared): Promise<PaperOutcome> => {
  if (paperHash?.kind !== "given" || status.contentProof === "") return null;
  if (!globalThis.crypto?.subtle) return "no-cryptography";
  const proof = toHex(await sha256(new TextEncoder().encode(`${token}#${paperHash.hex}`)));
  return proof === status.contentProof ? "same" : "other";
};

/** The code on the paper against the certificate it leads to; the hash behind # never leaves the browser. */
export const usePaperOutcome = ({ status, token, paperHash }: Compared): PaperOutcome => {
  const [outcome, setOutcome] = useState<PaperOutcome>(null);
  useEffect(() => {
    let isCurrent = true;
    compare({ status, token, paperHash }).then((found) => isCurrent && setOutcome(found));
    return () => {
      isCurrent = false;
    };
  }, [status, token, paperHash]);
  return outcome;
};

type Props = {
  readonly status: PublicStatus;
  readonly paperHash: PaperHash;
  readonly outcome: PaperOutcome;
};

/** What came of comparing them, in words. */
export function PaperCode({ status, paperHash, outcome }: Props) {
  if (status.contentProof === "") return null;
  if (paperHash.kind === "broken")
    return (
      <Notice kind="caution" title="Caution: the code on your paper was not read whole">
        What stands behind # in the address is no hash: it was cut, changed or mistyped. Read the code on the
        paper again, or write the Content SHA-256 printed at its foot behind #.
      </Notice>
    );
  if (paperHash.kind === "absent")
    return (
      <p className="quiet">
        Your address ends before #: it names the document, and the paper itself was not compared. Read the
        code on it, write the Content SHA-256 printed at its foot behind #, or drop the file.
      </p>
    );
  if (outcome === "same")
    return (
      <p className="standing-paper">
        The code on your paper belongs to this certificate: it carries the content hash that was signed.
      </p>
    );
  if (outcome === "other")
    return (
      <Notice kind="danger" title="Danger: this is not the paper that was signed">
        The certificate exists, but the paper carries another content hash than the one that was signed. Its
        figures may have been changed. Rely on nothing it says until the laboratory has seen it.
      </Notice>
    );
  if (outcome === "no-cryptography")
    return (
      <Notice kind="caution" title="Caution: the paper could not be compared">
        This browser offers no cryptography to pages that come over plain http. Open the site by https.
      </Notice>
    );
  return null;
}
