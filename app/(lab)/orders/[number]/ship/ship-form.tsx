import { ActionForm } from "@/app/_ui/action-form.client";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import type { OrderShipments } from "@/lib/views/shipment/order-shipments";
import { shipAction } from "./actions";

type Sensor = OrderShipments["sensors"][number];

const hintOf = ({ isWithdrawn, why }: Sensor): string =>
  isWithdrawn
    ? "Certificate withdrawn: agree with the customer before it goes back."
    : why === ""
      ? "Without a certificate: say why below."
      : `Goes back unmeasured: ${why}.`;

/** What is typed for all of the parcel begins with why they go back. */
const reasonOf = (sensors: readonly Sensor[]): string =>
  [...new Set(sensors.flatMap(({ why }) => (why === "" ? [] : [`Not measured: ${why}`])))]
    .join("; ")
    .slice(0, 400);

const Choice = ({ sensor }: { readonly sensor: Sensor }) => (
  <CheckboxField
    name="tags"
    value={sensor.tag}
    label={`${sensor.serial}, type ${sensor.typeLetter}, ${sensor.tag}`}
    defaultChecked={sensor.handBack !== null && !sensor.isWithdrawn}
    {...(sensor.state === "issued" && !sensor.isWithdrawn ? {} : { hint: hintOf(sensor) })}
  />
);

export function ShipForm({ view }: { readonly view: OrderShipments }) {
  const free = view.sensors.filter(({ hold, away }) => hold === "" && away === "");
  const finished = free.filter(({ state, isWithdrawn }) => state === "issued" && !isWithdrawn);
  const withdrawn = free.filter(({ isWithdrawn }) => isWithdrawn);
  const unmeasured = free.filter(({ state }) => state === "received");
  return (
    <ActionForm action={shipAction} label="Send sensors back">
      <input type="hidden" name="number" value={view.number} />
      <FieldGroup legend="Finished, with their certificates">
        {finished.length === 0 ? <p className="quiet">None at the moment.</p> : null}
        {finished.map((sensor) => (
          <Choice key={sensor.tag} sensor={sensor} />
        ))}
      </FieldGroup>
      {withdrawn.length > 0 ? (
        <FieldGroup legend="Finished, with no certificate that stands">
          {withdrawn.map((sensor) => (
            <Choice key={sensor.tag} sensor={sensor} />
          ))}
        </FieldGroup>
      ) : null}
      {unmeasured.length > 0 ? (
        <FieldGroup legend="On the shelf, not measured">
          {unmeasured.map((sensor) => (
            <Choice key={sensor.tag} sensor={sensor} />
          ))}
          <TextField
            name="reason"
            label="Why they leave without a certificate"
            defaultValue={reasonOf(unmeasured)}
            optional
            maxLength={400}
          />
        </FieldGroup>
      ) : null}
      <ChoiceField
        name="handedOver"
        legend="How they go"
        defaultValue="carrier"
        choices={[
          { value: "carrier", label: "By carrier" },
          { value: "in-person", label: "Handed over in person" },
        ]}
      />
      <TextField
        name="carrier"
        label="Carrier"
        hint="Stays empty where they are handed over in person."
        maxLength={80}
      />
      <TextField name="reference" label="The carrier’s number" optional maxLength={80} />
      <TextField name="toWhom" label="Who takes them, in person" optional maxLength={120} />
      <SelectField
        name="addressId"
        label="Address"
        hint={
          view.returnTo.id === null ? undefined : "The one that was chosen with the order stands here first."
        }
        defaultValue={view.returnTo.id ?? ""}
        optional
        prompt={`The customer’s own: ${view.ownAddress.replaceAll("\n", ", ")}`}
        choices={view.addresses.map(({ id, title, addressLines }) => ({
          value: id,
          label: `${title}: ${addressLines.replaceAll("\n", ", ")}`,
        }))}
      />
      <div className="form-actions">
        <SubmitButton>Send them back</SubmitButton>
      </div>
    </ActionForm>
  );
}
