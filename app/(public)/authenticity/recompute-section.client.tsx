"use client";
import { useState } from "react";
import { Section } from "@/app/_ui/section";
import type { CarriedEvidence } from "@/lib/documents/authenticity/numbers/carried-evidence";
import type { ComputedNumbers } from "@/lib/documents/authenticity/numbers/compute-numbers";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import type { Progress } from "@/lib/domain/certificate/recompute/recompute";
import { RecomputeResult } from "./recompute-result.client";
import { runRecomputation } from "./recompute-run.client";

type Props = {
  /** Of the file that has just passed its check. */
  readonly content: CertificateContent;
  readonly evidence: CarriedEvidence;
};

type State =
  | { readonly kind: "waiting" }
  | { readonly kind: "computing"; readonly progress: Progress | null }
  | { readonly kind: "problem"; readonly text: string }
  | { readonly kind: "done"; readonly result: ComputedNumbers };

const progressText = (progress: Progress | null): string =>
  progress ? `Computing: table ${progress.done} of ${progress.of}` : "Computing";

/** Where each printed number is computed again from the evidence, in this browser. */
export function RecomputeSection({ content, evidence }: Props) {
  const [state, setState] = useState<State>({ kind: "waiting" });
  const compute = async (bytes: Uint8Array): Promise<void> => {
    setState({ kind: "computing", progress: null });
    try {
      const show = (progress: Progress) => setState({ kind: "computing", progress });
      setState({ kind: "done", result: await runRecomputation({ content, evidence }, bytes, show) });
    } catch (error) {
      setState({ kind: "problem", text: error instanceof Error ? error.message : String(error) });
    }
  };
  const isBusy = state.kind === "computing";
  return (
    <Section title="The numbers" note="Computed again here, from the readings.">
      {evidence.kind === "attached" ? (
        <div className="form-actions">
          <button type="button" className="button" disabled={isBusy} onClick={() => compute(evidence.bytes)}>
            Compute every number again
          </button>
          <span className="quiet">The evidence is attached to this document.</span>
        </div>
      ) : (
        <div className="drop">
          <label htmlFor="evidence-file">
            <strong>The evidence file (JSON) of {content.number}</strong>: its customer finds it beside the
            certificate. It stays in your browser.
          </label>
          <input
            id="evidence-file"
            type="file"
            className="input"
            accept=".json,application/json"
            disabled={isBusy}
            onChange={async (event) => {
              const [file] = event.currentTarget.files ?? [];
              event.currentTarget.value = "";
              if (file) await compute(new Uint8Array(await file.arrayBuffer()));
            }}
          />
        </div>
      )}
      <div aria-live="polite" className="stack">
        {state.kind === "computing" ? <p>{progressText(state.progress)} …</p> : null}
        {state.kind === "problem" ? (
          <p className="verdict-problem">Nothing was computed: {state.text}</p>
        ) : null}
        {state.kind === "done" ? <RecomputeResult content={content} result={state.result} /> : null}
      </div>
    </Section>
  );
}
