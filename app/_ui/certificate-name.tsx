import Link from "next/link";
import { StandingMark } from "@/app/_ui/standing-mark";
import type { Standing } from "@/lib/domain/certificate/standing";

type Props = { readonly number: string; readonly standing: Standing };

/** A certificate's number, which opens it, and beside it what became of it, where it is not simply valid. */
export function CertificateName({ number, standing }: Props) {
  return (
    <>
      <Link href={`/certificates/${number}`}>{number}</Link>
      {standing.kind === "valid" ? null : (
        <>
          {" "}
          <StandingMark standing={standing} />
        </>
      )}
    </>
  );
}
