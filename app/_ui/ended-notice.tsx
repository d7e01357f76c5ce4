import Link from "next/link";
import type { ReactNode } from "react";
import { Notice } from "@/app/_ui/notice";
import { Timestamp } from "@/app/_ui/timestamp";
import { hasEnded, type Standing } from "@/lib/domain/certificate/standing";

type Props = {
  readonly number: string;
  readonly standing: Standing;
  /** What else is to be said of the one that counts instead. */
  readonly further?: (successor: string) => ReactNode;
};

/** At the head of a page about a certificate that stands no longer: since when and why, and which one counts instead. */
export function EndedNotice({ number, standing, further }: Props) {
  if (!hasEnded(standing)) return null;
  const { kind } = standing;
  return (
    <Notice kind="caution" title={`Caution: ${kind}`}>
      {kind === "withdrawn" ? (
        "The results of this certificate are not to be used."
      ) : (
        <>
          <Link href={`/certificates/${standing.successor}`}>{standing.successor}</Link> counts instead of{" "}
          {number}. {further?.(standing.successor)}
        </>
      )}{" "}
      Since <Timestamp at={standing.at} precision="minute" />. Reason: {standing.reason}
    </Notice>
  );
}
