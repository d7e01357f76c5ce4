import { ActionForm } from "@/app/_ui/action-form.client";
import { DateField } from "@/app/_ui/date-field.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { FileField } from "@/app/_ui/file-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { reportUnitLabels, reportUnits } from "@/lib/domain/provider/report-results";
import type { ProviderReports } from "@/lib/views/provider-reports";
import { recordReportAction } from "./actions";

type Setpoint = ProviderReports["setpoints"][number];

function Row({
  at,
  setpoint,
  unit,
}: {
  readonly at: number;
  readonly setpoint: Setpoint;
  readonly unit: string;
}) {
  const name = `results.${at}`;
  return (
    <FieldGroup legend={`Ordered: ${setpoint.typed} ${unit}`} columns>
      <input type="hidden" name={`${name}.orderedCelsius`} value={setpoint.celsius} />
      <TextField
        name={`${name}.nominalCelsius`}
        label="Nominal, °C"
        defaultValue={String(Number(setpoint.celsius.toFixed(2)))}
        optional
      />
      <TextField name={`${name}.value`} label="Deviation or emf" optional />
      <TextField name={`${name}.expanded`} label="U" optional />
      <TextField name={`${name}.coverageFactor`} label="k" optional />
    </FieldGroup>
  );
}

/** A provider's certificate, copied from the paper: nothing of it is evaluated here. */
export function ReportForm({ of }: { readonly of: ProviderReports }) {
  return (
    <ActionForm action={recordReportAction} label={`Record ${of.provider?.name}’s certificate for ${of.tag}`}>
      <input type="hidden" name="sensor" value={of.tag} />
      <TextField name="certificate" label="Number of their certificate" maxLength={120} />
      <DateField name="issuedOn" label="Its day" />
      <TextField
        name="accreditation"
        label="Their accreditation, as the certificate states it"
        defaultValue={of.provider?.accreditation ?? ""}
        maxLength={300}
        optional
      />
      <SelectField
        name="unit"
        label="It states"
        choices={reportUnits.map((value) => ({ value, label: reportUnitLabels[value] }))}
      />
      <p className="quiet">
        Figures with the certificate’s own digits, U in the unit of the value. Leave a row’s value, U and k
        empty where it states nothing.
      </p>
      {of.setpoints.map((setpoint, at) => (
        <Row key={setpoint.typed} at={at} setpoint={setpoint} unit={of.unit} />
      ))}
      <FileField
        name="document"
        label="The certificate’s file"
        hint="PDF, at most 10 MB."
        accept="application/pdf"
      />
      {of.reports.length > 0 ? (
        <TextArea
          name="correction"
          label="Why it is recorded once more"
          hint="The customer reads it beside the certificate."
          rows={2}
        />
      ) : null}
      <div className="form-actions">
        <SubmitButton>Record their certificate</SubmitButton>
      </div>
    </ActionForm>
  );
}
