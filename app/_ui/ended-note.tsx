import { StandingMark } from "@/app/_ui/standing-mark";
import { hasEnded, type Standing, standingSentence } from "@/lib/domain/certificate/standing";

type Props = { readonly number: string; readonly standing: Standing };

/** That a certificate stands no longer, and what counts instead; nothing where it stands. */
export function EndedNote({ number, standing }: Props) {
  if (!hasEnded(standing)) return null;
  return (
    <>
      <StandingMark standing={standing} /> <strong>{standingSentence(number, standing)}</strong>{" "}
    </>
  );
}
