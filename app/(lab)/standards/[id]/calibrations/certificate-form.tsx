import { ActionForm } from "@/app/_ui/action-form.client";
import { DateField } from "@/app/_ui/date-field.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { FileField } from "@/app/_ui/file-field.client";
import { NumberField } from "@/app/_ui/number-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import type { Said } from "@/lib/domain/calibration/dcc-says";
import type { CalibrationFormView } from "@/lib/views/calibration-form";
import { FindingsFields } from "../../findings-fields";
import { ParentsField } from "../../parents-field.client";
import { SaidBeside } from "../../said-beside.client";
import { recordCalibrationAction } from "./actions";
import { IssuerFields } from "./issuer-fields.client";

type Props = { readonly view: CalibrationFormView; readonly today: string };
type LineProps = {
  readonly said: readonly Said[];
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  readonly rows?: number;
  readonly optional?: boolean;
};

/** A line of words, with what the file says beside it. */
function Line({ said, name, label, hint, rows, optional }: LineProps) {
  const own = said.filter(({ field }) => field === name);
  const value = own[0] ? String(own[0].value) : undefined;
  const props = { name, label, hint, optional, defaultValue: value };
  return (
    <SaidBeside said={own} reason={name}>
      {rows ? <TextArea {...props} rows={rows} /> : <TextField {...props} />}
    </SaidBeside>
  );
}

function Papers({ said }: { readonly said: readonly Said[] }) {
  const performed = said.filter(({ field }) => field === "performedOn");
  return (
    <>
      <SaidBeside said={performed} reason="performedOn">
        <DateField
          name="performedOn"
          label="Performed on"
          defaultValue={performed[0] ? String(performed[0].value) : undefined}
        />
      </SaidBeside>
      <DateField name="dueOn" label="Due again on" hint="Set by the laboratory, from its own history." />
      <TextField name="scale" label="Scale" defaultValue="ITS-90" optional />
      <Line said={said} name="conditions" label="Conditions" rows={3} optional />
      <Line
        said={said}
        name="traceabilityStatement"
        label="Statement of traceability, as the certificate makes it"
        hint="Without one it will not be accepted."
        rows={3}
        optional
      />
    </>
  );
}

export function CertificateForm({ view, today }: Props) {
  const { equipment, providers, laboratory, digital } = view;
  const said = digital?.says ?? [];
  const saidOf = (name: string) => {
    const found = said.find(({ field }) => field === name);
    return found && String(found.value);
  };
  const issuers = providers.map(
    ({ name, route, accreditation, state, approvedFrom, approvedUntil, scope }) => ({
      name,
      route,
      accreditation,
      isApproved:
        state === "approved" &&
        (approvedFrom ?? "") <= today &&
        today <= (approvedUntil ?? "") &&
        scope.some(({ kind }) => kind === equipment.kind),
    }),
  );
  const issuerSaid = said.filter(({ field }) => field === "issuer" || field === "accreditation");
  return (
    <ActionForm action={recordCalibrationAction} label="Record a certificate" shape="wide">
      <input type="hidden" name="equipmentId" value={equipment.id} />
      {digital ? (
        <>
          <input type="hidden" name="documentId" value={digital.documentId} />
          <input type="hidden" name="offer" value={digital.offer} />
        </>
      ) : (
        <FileField
          name="document"
          label="The certificate’s file"
          hint="PDF, PNG or JPEG, at most 4 MB; kept as it came. Not asked for an in-house calibration."
          accept=".pdf,.png,.jpg,.jpeg,.xml"
          optional
        />
      )}
      <Line said={said} name="certificate" label="Certificate number" />
      <Line
        said={said}
        name="itemSerial"
        label="Serial number on the certificate"
        hint={`As it stands there, not from the record; ${equipment.tag} has ${equipment.serial}.`}
      />
      <SaidBeside said={issuerSaid} reason="issuer">
        <IssuerFields
          issuers={issuers}
          laboratory={laboratory}
          issuer={saidOf("issuer")}
          accreditation={saidOf("accreditation")}
        />
      </SaidBeside>
      <Papers said={said} />
      <FieldGroup legend="What it found">
        <FindingsFields kind={equipment.kind} said={said} />
        <NumberField
          name="fromCelsius"
          label="Calibrated range, from"
          unit="°C"
          hint="Only where the certificate narrows it."
          optional
        />
        <NumberField name="toCelsius" label="Calibrated range, to" unit="°C" optional />
      </FieldGroup>
      <ParentsField initial={digital?.parents ?? []} />
      <div className="form-actions">
        <SubmitButton>Record the certificate</SubmitButton>
      </div>
    </ActionForm>
  );
}
