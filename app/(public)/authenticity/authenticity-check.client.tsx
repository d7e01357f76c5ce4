"use client";
import { useEffect, useState } from "react";
import { Section } from "@/app/_ui/section";
import { unpackStatus } from "@/lib/domain/authenticity/even-length";
import { type PaperHash, readPaperHash } from "@/lib/domain/authenticity/paper-hash";
import { type CheckedFile, checkDropped } from "./check-dropped.client";
import { DropFile } from "./drop-file.client";
import { RecomputeSection } from "./recompute-section.client";
import { StandingOfPaper } from "./standing-of-paper.client";
import { VerdictCard } from "./verdict-card.client";
import "./authenticity.css";

type Props = {
  /** The packed status; null where no document was named. */
  readonly said: string | null;
  readonly token: string | null;
};

type State =
  | { readonly kind: "waiting" }
  | { readonly kind: "checking"; readonly name: string }
  | { readonly kind: "problem"; readonly name: string; readonly text: string }
  | { readonly kind: "checked"; readonly name: string; readonly file: CheckedFile };

/** Known only in the browser: what stands behind #, and who serves this page. */
const usePlace = (): { readonly host: string; readonly paperHash: PaperHash } | null => {
  const [place, setPlace] = useState<ReturnType<typeof usePlace>>(null);
  useEffect(() => {
    const read = () => setPlace({ host: location.host, paperHash: readPaperHash(location.hash) });
    read();
    window.addEventListener("hashchange", read);
    return () => window.removeEventListener("hashchange", read);
  }, []);
  return place;
};

/** Status, paper and file of one certificate, checked against each other. The file stays in the browser. */
export function AuthenticityCheck({ said, token }: Props) {
  const status = said === null ? null : unpackStatus(said);
  const place = usePlace();
  const [state, setState] = useState<State>({ kind: "waiting" });
  const check = async (dropped: File): Promise<void> => {
    const { name } = dropped;
    setState({ kind: "checking", name });
    try {
      const paperHash = readPaperHash(location.hash);
      const file = await checkDropped(dropped, { token, status, paperHash, host: location.host });
      setState({ kind: "checked", name, file });
    } catch (error) {
      setState({ kind: "problem", name, text: error instanceof Error ? error.message : String(error) });
    }
  };
  return (
    <>
      {status && token !== null ? (
        <Section title="How it stands" note={place ? `Said by ${place.host}` : "Said by this site"}>
          <StandingOfPaper status={status} token={token} paperHash={place?.paperHash ?? null} />
        </Section>
      ) : null}
      <Section title="The file" note="It stays in your browser.">
        <DropFile onFile={check} isBusy={state.kind === "checking"} />
        <div aria-live="polite" className="stack">
          {state.kind === "checking" ? <p>Checking {state.name} …</p> : null}
          {state.kind === "problem" ? (
            <p className="verdict-problem">
              {state.name} could not be checked: {state.text}
            </p>
          ) : null}
          {state.kind === "checked" ? (
            <VerdictCard name={state.name} whole={state.file.whole} file={state.file.verdict} />
          ) : null}
        </div>
      </Section>
      {state.kind === "checked" &&
      state.file.verdict.verdict === "total-passed" &&
      state.file.verdict.content ? (
        <RecomputeSection content={state.file.verdict.content} evidence={state.file.evidence} />
      ) : null}
    </>
  );
}
