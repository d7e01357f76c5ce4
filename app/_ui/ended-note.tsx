import { StandingMark } from "@/app/_ui/standing-mark";
import { endingParts, hasEnded, type Standing } from "@/lib/domain/certificate/standing";

type Props = { readonly number: string; readonly standing: Standing };

/** That a certificate stands no longer, and what counts instead, as a link to it; nothing where it stands. */
export function EndedNote({ number, standing }: Props) {
  if (!hasEnded(standing)) return null;
  const { before, successor, after } = endingParts(number, standing);
  const token = standing.kind === "withdrawn" ? undefined : standing.successorToken;
  return (
    <>
      <StandingMark standing={standing} />{" "}
      <strong>
        {before}
        {/* How it stands: told at once, where its document may still be in the making. */}
        {token === undefined ? successor : <a href={`/authenticity/${token}`}>{successor}</a>}
        {after}
      </strong>{" "}
    </>
  );
}
