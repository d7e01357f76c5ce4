import { ActionForm } from "@/app/_ui/action-form.client";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { DataTable } from "@/app/_ui/data-table";
import { FieldGroup } from "@/app/_ui/field-group";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { Timestamp } from "@/app/_ui/timestamp";
import type { AcceptanceCheck } from "@/lib/domain/calibration/acceptance-check";
import { acceptanceLabels } from "@/lib/domain/calibration/labels";
import type { CalibrationView } from "@/lib/views/calibration";
import { decideCalibrationAction } from "./actions";

const answerMarks = {
  yes: { state: "done", label: "Yes" },
  no: { state: "broken", label: "No" },
  "not-known": { state: "not-decidable", label: "Look yourself" },
} as const;

function Checks({ checks }: { readonly checks: readonly AcceptanceCheck[] }) {
  return (
    <DataTable
      caption="Questions of acceptance"
      captionUnseen
      columns={[
        { key: "question", header: "Question" },
        { key: "answer", header: "From the records" },
        { key: "finding", header: "Found" },
      ]}
      rows={checks.map(({ key, question, answer, finding }) => ({
        key,
        tone: answer === "no" ? "bad" : undefined,
        cells: { question, answer: <StateMark {...answerMarks[answer]} />, finding },
      }))}
    />
  );
}

function Form({ view }: { readonly view: CalibrationView }) {
  const { calibration, checks } = view;
  const isAccepted = calibration.acceptance === "accepted";
  return (
    <ActionForm action={decideCalibrationAction} label="Decide on the calibration" shape="wide">
      <input type="hidden" name="id" value={calibration.id} />
      {isAccepted ? null : (
        <FieldGroup legend="I have looked at the certificate and confirm">
          {checks.map(({ key, question, finding }) => (
            <CheckboxField key={key} name={`confirmed.${key}`} label={question} hint={finding} />
          ))}
        </FieldGroup>
      )}
      <ChoiceField
        name="decision"
        legend="Decision"
        choices={[
          ...(isAccepted
            ? []
            : [{ value: "accepted", label: "Accept", hint: "Runs made from now on may stand on it." }]),
          { value: "rejected", label: "Reject", hint: "It is never used; say why." },
        ]}
      />
      <TextArea
        name="reason"
        label="Reason"
        hint="Asked for where it is rejected, or accepted although an answer is no."
        rows={2}
        optional
      />
      <div className="form-actions">
        <SubmitButton>Record the decision</SubmitButton>
      </div>
    </ActionForm>
  );
}

/** The second person's part: what the records answer, what was decided, and the decision that is still to be taken. */
export function DecisionSection({ view }: { readonly view: CalibrationView }) {
  const { calibration, decisions, checks, mayDecide, isOwn } = view;
  const last = decisions.at(-1);
  return (
    <Section
      title="Acceptance"
      note="By a person who did not record it; ISO/IEC 17025, 6.4.4 and 6.6.2."
      wide
    >
      {decisions.map((one) => (
        <p key={one.at.toISOString()}>
          {acceptanceLabels[one.decision].split(":")[0]}
          {one.by ? ` by ${one.by}` : ""}, <Timestamp at={one.at} />
          {one.reason ? `: ${one.reason}` : ""}
        </p>
      ))}
      <Checks checks={last && last.checks.length > 0 ? last.checks : checks} />
      {calibration.acceptance === "waiting" && isOwn ? (
        <Notice kind="info">You recorded this certificate yourself: another person has to accept it.</Notice>
      ) : null}
      {mayDecide && !isOwn ? <Form view={view} /> : null}
    </Section>
  );
}
