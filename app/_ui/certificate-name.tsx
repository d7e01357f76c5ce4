import Link from "next/link";
import { StandingMark } from "@/app/_ui/standing-mark";
import type { Standing } from "@/lib/domain/certificate/standing";

type Props = {
  readonly number: string;
  readonly standing: Standing;
  /** Its own page, unless another page about it is meant. */
  readonly href?: string;
};

/** A certificate's number, as a link, and beside it what became of it, where it is not simply valid. */
export function CertificateName({ number, standing, href = `/certificates/${number}` }: Props) {
  return (
    <>
      <Link href={href}>{number}</Link>
      {standing.kind === "valid" ? null : (
        <>
          {" "}
          <StandingMark standing={standing} />
        </>
      )}
    </>
  );
}
