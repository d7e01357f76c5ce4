import { ActionForm } from "@/app/_ui/action-form.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { Section } from "@/app/_ui/section";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { Timestamp } from "@/app/_ui/timestamp";
import type { Actor } from "@/lib/domain/staff/actor";
import { type ProviderReports, providerReportsView } from "@/lib/views/provider-reports";
import { load } from "@/lib/web/load";
import { moveSensorsAction } from "../../storage/actions";
import { decideReportAction } from "./actions";
import { ReportForm } from "./report-form";

type Of = { readonly of: ProviderReports };

/** Out to the provider and back again, in the custody log with the reason. */
function CustodyOfProvider({ of: { tag, order, provider, isAway } }: Of) {
  if (!provider) return null;
  const title = isAway ? `It came back from ${provider.name}` : `Send it to ${provider.name}`;
  return (
    <Disclosure summary={title}>
      <ActionForm action={moveSensorsAction} label={title}>
        <input type="hidden" name="tags" value={tag} />
        <input type="hidden" name="kind" value={isAway ? "from-provider" : "to-provider"} />
        <input type="hidden" name="whom" value={provider.name} />
        <TextField
          name="condition"
          label={isAway ? "Condition as it came back" : "Why, and its condition"}
          defaultValue={isAway ? "" : `Measured there for order ${order}`}
          maxLength={400}
        />
        <div className="form-actions">
          <SubmitButton kind="quiet">{title}</SubmitButton>
        </div>
      </ActionForm>
    </Disclosure>
  );
}

function DecideForm({ id, certificate }: { readonly id: string; readonly certificate: string }) {
  return (
    <ActionForm action={decideReportAction} label={`Hold the record against certificate ${certificate}`}>
      <input type="hidden" name="id" value={id} />
      <SelectField
        name="decision"
        label="Each figure, the number, the day and the sensor’s serial"
        prompt="Open the file, compare, then choose"
        choices={[
          { value: "accepted", label: "Agree with the certificate: it counts" },
          { value: "rejected", label: "Do not agree: to be recorded again" },
        ]}
      />
      <TextArea name="reason" label="What does not agree" rows={2} optional />
      <div className="form-actions">
        <SubmitButton>Decide</SubmitButton>
      </div>
    </ActionForm>
  );
}

const standingOf = (report: ProviderReports["reports"][number]): string => {
  if (report.standing === null) return "Waits for a second person; it does not count yet";
  if (report.standing === "rejected") return "Rejected";
  return report.counts ? "Accepted: it counts" : "Accepted, corrected since";
};

function Report({ report, of }: Of & { readonly report: ProviderReports["reports"][number] }) {
  return (
    <li>
      <strong>{standingOf(report)}.</strong> Certificate{" "}
      <a href={`/api/provider-reports/${report.id}`}>{report.certificate} (PDF)</a> of {report.issuedOn} by{" "}
      {report.provider}
      {report.accreditation ? `, accreditation as stated: ${report.accreditation}` : ""}. Recorded by{" "}
      {report.recordedBy}, <Timestamp at={report.recordedAt} />
      {report.correction ? `, as a correction: ${report.correction}` : ""}
      {report.decided ? (
        <>
          ; decided by {report.decided.by}, <Timestamp at={report.decided.at} />
          {report.decided.reason ? `: ${report.decided.reason}` : ""}
        </>
      ) : null}
      <ul className="plain-list">
        {report.lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {report.standing === null && of.mayDecide ? (
        <DecideForm id={report.id} certificate={report.certificate} />
      ) : null}
    </li>
  );
}

/** Of a subcontracted line alone: what the provider measured, from its certificate, and whose turn it is. */
export async function ProviderSection({ actor, tag }: { readonly actor: Actor; readonly tag: string }) {
  const of = await load(providerReportsView(actor, tag));
  if (!of.provider && of.reports.length === 0) return null;
  return (
    <Section
      title="Measured by an external provider"
      id="provider"
      note={of.measuredBy ? `${of.measuredBy}.` : of.provider && `Subcontracted to ${of.provider.name}.`}
    >
      {of.reports.length === 0 ? <p className="quiet">No certificate of theirs is recorded yet.</p> : null}
      <ul className="stack plain-list">
        {of.reports.map((report) => (
          <Report key={report.id} report={report} of={of} />
        ))}
      </ul>
      {of.mayMove ? <CustodyOfProvider of={of} /> : null}
      {of.mayRecord ? (
        <Disclosure summary={of.reports.length === 0 ? "Record their certificate" : "Record it once more"}>
          <ReportForm of={of} />
        </Disclosure>
      ) : null}
    </Section>
  );
}
