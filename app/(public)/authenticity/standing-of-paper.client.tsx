"use client";
import type { PaperHash } from "@/lib/domain/authenticity/paper-hash";
import type { PublicStatus } from "@/lib/domain/authenticity/public-status";
import { PaperCode, usePaperOutcome } from "./paper-code.client";
import { StatusCard } from "./status-card.client";

type Props = {
  readonly status: PublicStatus;
  readonly token: string;
  /** null until the page knows its own address. */
  readonly paperHash: PaperHash | null;
};

/** How the certificate stands, and whether that is said of this paper: where it is not, the danger comes first. */
export function StandingOfPaper({ status, token, paperHash }: Props) {
  const outcome = usePaperOutcome({ status, token, paperHash });
  const isPaperOther = outcome === "other";
  const paper = paperHash ? <PaperCode status={status} paperHash={paperHash} outcome={outcome} /> : null;
  return (
    <>
      {isPaperOther ? paper : null}
      <StatusCard status={status} isPaperOther={isPaperOther} />
      {isPaperOther ? null : paper}
    </>
  );
}
