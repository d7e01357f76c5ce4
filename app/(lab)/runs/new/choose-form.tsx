import Link from "next/link";
import { Button } from "@/app/_ui/button";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { TypeLetter } from "@/app/_ui/type-letter";
import { dueLabels } from "@/lib/domain/calibration/due";
import { setKindLabels } from "@/lib/domain/parts/decide-set";
import type { NewRunView } from "@/lib/views/run/new-run";
import { celsiusText } from "../run-marks";

type Props = { readonly view: NewRunView; readonly chosen: readonly string[] };

/** First which sensors and references, as an address that can be kept; then where each stands. */
export function ChooseForm({ view, chosen }: Props) {
  return (
    <form
      method="get"
      action="/runs/new"
      className="form form-wide"
      aria-label="Choose sensors and references"
    >
      <input type="hidden" name="sent" value="yes" />
      <Section
        title="Sensors"
        note="Received, with an accepted order. Sensors of several customers may share a load."
        wide
      >
        <DataTable
          caption="Sensors that wait for a furnace"
          captionUnseen
          columns={[
            { key: "choose", header: "Load" },
            { key: "type", header: "Type" },
            { key: "customer", header: "Serial, customer" },
            { key: "setpoints", header: "Ordered at", unit: "°C" },
            { key: "rule", header: "Agreed" },
            { key: "set", header: "Next set" },
          ]}
          rows={view.waiting.map((sensor) => ({
            key: sensor.tag,
            cells: {
              choose:
                sensor.nextSet === null ? (
                  <Link href={`/sensors/${sensor.tag}`}>{sensor.tag}</Link>
                ) : (
                  <CheckboxField
                    name="sensor"
                    value={sensor.tag}
                    label={sensor.tag}
                    defaultChecked={chosen.includes(sensor.tag)}
                  />
                ),
              type: <TypeLetter letter={sensor.type} />,
              customer: `${sensor.serial}, ${sensor.customer}`,
              setpoints: sensor.setpointsCelsius.map(celsiusText).join(", "),
              rule: sensor.rule,
              set: sensor.nextSet === null ? "To be annealed first" : setKindLabels[sensor.nextSet],
            },
          }))}
          empty={
            <EmptyState
              title="No sensor waits"
              action={<LinkButton href="/orders">To the orders</LinkButton>}
            >
              Sensors come here once they are taken in for an accepted order.
            </EmptyState>
          }
        />
      </Section>
      <Section title="References" note="Two, if you can: each then shows what the other does." wide>
        <DataTable
          caption="Reference thermocouples in service"
          captionUnseen
          columns={[
            { key: "choose", header: "Load" },
            { key: "type", header: "Type" },
            { key: "due", header: "Calibration" },
            { key: "dueOn", header: "Due" },
          ]}
          rows={view.references.map((reference) => ({
            key: reference.tag,
            tone: reference.due === "out-of-date" || reference.due === "none" ? "bad" : undefined,
            cells: {
              choose: (
                <CheckboxField
                  name="reference"
                  value={reference.tag}
                  label={reference.tag}
                  defaultChecked={chosen.includes(reference.tag)}
                />
              ),
              type: reference.type ? <TypeLetter letter={reference.type} /> : "",
              due: <StateMark state={reference.due} label={dueLabels[reference.due]} />,
              dueOn: reference.dueOn ?? "none",
            },
          }))}
          empty={
            <EmptyState
              title="No reference in service"
              action={<LinkButton href="/standards">To the standards</LinkButton>}
            >
              A run needs at least one reference with a calibration in date.
            </EmptyState>
          }
        />
      </Section>
      <div className="form-actions">
        <Button type="submit" kind="primary">
          Place them
        </Button>
      </div>
    </form>
  );
}
