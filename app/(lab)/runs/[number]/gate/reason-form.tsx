import { ActionForm } from "@/app/_ui/action-form.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { subjectWords } from "@/lib/domain/gate/subject-words";
import type { RunGateView } from "@/lib/views/run/run-gate";
import { overrideGateAction } from "./actions";

type Row = RunGateView["headings"][number]["rows"][number];
type Props = { readonly run: string; readonly row: Row };

/** One reason for all that this row is said of; the last run's own reason stands there already. */
export function ReasonForm({ run, row }: Props) {
  const { override, asLastTime } = row;
  if (!override) return null;
  if (!override.mayI) return null;
  const whom = subjectWords(row.code, row.subjects) || "the run";
  return (
    <ActionForm action={overrideGateAction} label={`Reason: ${row.code.replaceAll("-", " ")}`}>
      <input type="hidden" name="run" value={run} />
      <input type="hidden" name="code" value={row.code} />
      {row.subjects.map((subject) => (
        <input key={subject} type="hidden" name="subjects" value={subject} />
      ))}
      <TextField
        name="reason"
        label={`Why it may start all the same: ${whom}`}
        defaultValue={asLastTime?.reason}
        maxLength={600}
        hint={override.reachesCertificate ? "It stands on the certificate." : "It stays in the run’s record."}
      />
      <div className="form-actions">
        <SubmitButton kind="quiet">Set aside with this reason</SubmitButton>
      </div>
    </ActionForm>
  );
}
