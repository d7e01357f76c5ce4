import { ActionForm } from "@/app/_ui/action-form.client";
import { DataTable } from "@/app/_ui/data-table";
import { Disclosure } from "@/app/_ui/disclosure";
import { SelectField } from "@/app/_ui/select-field.client";
import { StateMark } from "@/app/_ui/state-mark";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { TypeLetter } from "@/app/_ui/type-letter";
import type { RunWindowsView } from "@/lib/views/run/run-windows";
import { stateSensorAction } from "../../actions";

type Setpoint = RunWindowsView["setpoints"][number];
type Props = { readonly view: RunWindowsView; readonly setpoint: Setpoint };

const choices = [
  { value: "invalid", label: "Invalid" },
  { value: "not-reached", label: "Not reached" },
  { value: "measured", label: "Measured after all" },
];

/** A sensor that fails stays in the run: its state at this setpoint, with the reason. */
export function SensorStates({ view, setpoint }: Props) {
  const { sensors } = setpoint;
  const failed = sensors.filter(({ state }) => state !== "measured");
  return (
    <>
      {failed.length === 0 ? (
        <p className="quiet">
          {sensors.length === 1 ? "The sensor counts" : `All ${sensors.length} sensors count`} as measured
          here.
        </p>
      ) : (
        <DataTable
          caption={`Sensors that failed at ${setpoint.celsius} °C`}
          captionUnseen
          columns={[
            { key: "sensor", header: "Sensor" },
            { key: "state", header: "State" },
            { key: "reason", header: "Reason" },
          ]}
          rows={failed.map(({ tag, type, state, reason }) => ({
            key: tag,
            tone: "watch",
            cells: {
              sensor: (
                <>
                  {tag} <TypeLetter letter={type} />
                </>
              ),
              state: <StateMark state={state} />,
              reason,
            },
          }))}
        />
      )}
      {view.head.mayEvaluate ? (
        <Disclosure summary="A sensor failed here">
          <ActionForm action={stateSensorAction} label={`State of a sensor at ${setpoint.celsius} °C`}>
            <input type="hidden" name="run" value={view.head.number} />
            <input type="hidden" name="setpoint" value={setpoint.position} />
            <div className="fields">
              <SelectField
                name="sensor"
                label="Sensor"
                choices={sensors.map(({ tag }) => ({ value: tag, label: tag }))}
              />
              <SelectField name="state" label="State" choices={choices} />
            </div>
            <TextField
              name="reason"
              label="Why"
              optional
              maxLength={600}
              hint="It stands on the certificate."
            />
            <div className="form-actions">
              <SubmitButton kind="quiet">State it</SubmitButton>
            </div>
          </ActionForm>
        </Disclosure>
      ) : null}
    </>
  );
}
