import { ActionForm } from "@/app/_ui/action-form.client";
import { KeyHint } from "@/app/_ui/key-hint";
import { LinkButton } from "@/app/_ui/link-button";
import { StateMark } from "@/app/_ui/state-mark";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import type { ReviewResultPage } from "@/lib/views/review-result";
import { openResultAction } from "../../../actions";
import { SendWhenSeen } from "./send-when-seen.client";

type Duty = ReviewResultPage["duty"];

function Recorded({ duty }: { readonly duty: Duty }) {
  if (duty.isOpened) return <StateMark state="done" label="Opened by you" />;
  const { ids } = duty;
  return (
    <ActionForm action={openResultAction} shape="inline" label="Opened">
      <input type="hidden" name="runId" value={ids.runId} />
      <input type="hidden" name="evaluationId" value={ids.evaluationId} />
      <input type="hidden" name="sensorId" value={ids.sensorId} />
      <input type="hidden" name="setpointId" value={ids.setpointId} />
      <SendWhenSeen key={`${ids.sensorId} ${ids.setpointId}`} />
      <SubmitButton kind="quiet">Opened and looked at</SubmitButton>
    </ActionForm>
  );
}

/** Why this result is looked at, that it was, and where the next one is that must be. */
export function Opening({ duty, up }: { readonly duty: Duty; readonly up: string }) {
  if (!duty.records) return null;
  return (
    <div className="row" data-opening={duty.isOpened ? "opened" : "open"}>
      <Recorded duty={duty} />
      <span>
        opened {duty.opened} of {duty.mustOpen} that must be
      </span>
      {duty.nextToOpen ? (
        <LinkButton href={duty.nextToOpen} kind="quiet">
          Next that must be opened <KeyHint keys={["n"]} />
        </LinkButton>
      ) : (
        <LinkButton href={`${up}#decide`} kind="quiet">
          Nothing more must be opened: decide <KeyHint keys={["n"]} />
        </LinkButton>
      )}
    </div>
  );
}

/** What names this result, the gravest first; said before the figures. */
export function Because({ duty }: { readonly duty: Duty }) {
  if (duty.because.length === 0 && !duty.isDrawn && duty.replaces === null) return null;
  return (
    <ul className="plain-list">
      {duty.replaces === null ? null : (
        <li>
          <StateMark state="exception" label={`To be stated in place of ${duty.replaces}.`} />
        </li>
      )}
      {duty.because.map((reason) => (
        <li key={reason}>
          <StateMark state="exception" label={reason} />
        </li>
      ))}
      {duty.isDrawn ? (
        <li>
          <StateMark state="open" label="Drawn by lot: nothing speaks against it." />
        </li>
      ) : null}
    </ul>
  );
}
