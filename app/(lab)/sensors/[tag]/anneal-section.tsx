import { ActionForm } from "@/app/_ui/action-form.client";
import { DateField } from "@/app/_ui/date-field.client";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import type { Actor } from "@/lib/domain/staff/actor";
import { type SensorSets, sensorSetsView } from "@/lib/views/sensor/sensor-sets";
import { load } from "@/lib/web/load";
import { annealSensorAction } from "./actions";

function AnnealForm({ sensor }: { readonly sensor: SensorSets }) {
  return (
    <>
      <Notice kind="danger" title="Hot work">
        A wire or tube at annealing temperature burns at a touch and long after. Heat and cool it as your
        local rules and the furnace maker's manual say, never alone; a current through a bare wire needs its
        own switch and guard. This page records what was done and commands nothing: no record stands in for
        the furnace's own over-temperature cutout.
      </Notice>
      <ActionForm action={annealSensorAction} label={`Record the annealing of ${sensor.tag}`}>
        <input type="hidden" name="sensor" value={sensor.tag} />
        <TextField
          name="celsius"
          label="Temperature, °C"
          defaultValue={sensor.ordered ? String(sensor.ordered.celsius) : ""}
        />
        <TextField
          name="hours"
          label="Time, h"
          defaultValue={sensor.ordered ? String(sensor.ordered.hours) : ""}
        />
        <TextField
          name="manner"
          label="How"
          hint="In a tube furnace or by current, in what gas, how it cooled. It stands on the certificate."
          maxLength={300}
        />
        <DateField name="performedOn" label="Done on" />
        <div className="form-actions">
          <SubmitButton>Record the annealing</SubmitButton>
        </div>
      </ActionForm>
    </>
  );
}

/** Where a sensor is ordered after annealing: what was done, and the record of it once it is due. */
export async function AnnealSection({ actor, tag }: { readonly actor: Actor; readonly tag: string }) {
  const sensor = await load(sensorSetsView(actor, tag));
  if (!sensor.isAsked) return null;
  return (
    <Section title="Annealing" id="annealing" note={sensor.sets}>
      {sensor.anneals.length === 0 ? (
        <p className="quiet">
          Not annealed yet.
          {sensor.ordered ? ` Ordered: ${sensor.ordered.celsius} °C for ${sensor.ordered.hours} h.` : ""}
        </p>
      ) : (
        <ul className="plain-list">
          {sensor.anneals.map((one) => (
            <li key={`${one.performedOn} ${one.manner}`}>
              {one.performedOn}: {one.celsius} °C for {one.hours} h, {one.manner}
            </li>
          ))}
        </ul>
      )}
      {sensor.mayAnneal ? <AnnealForm sensor={sensor} /> : null}
    </Section>
  );
}
