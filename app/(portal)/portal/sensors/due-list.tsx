import Link from "next/link";
import { Button } from "@/app/_ui/button";
import { FieldGroup } from "@/app/_ui/field-group";
import { StateMark } from "@/app/_ui/state-mark";
import { TypeLetter } from "@/app/_ui/type-letter";
import type { DueStage } from "@/lib/domain/recall/sensors-due";
import type { PortalSensor } from "@/lib/views/portal/sensors";

const marks: Readonly<Record<DueStage, { readonly state: string; readonly label: string }>> = {
  withdrawn: { state: "out-of-date", label: "Certificate withdrawn" },
  overdue: { state: "out-of-date", label: "Overdue" },
  due: { state: "due", label: "Due soon" },
  later: { state: "in-date", label: "Later" },
  "under-way": { state: "active", label: "With us now" },
  "no-interval": { state: "none", label: "No interval set" },
};

const when = (sensor: PortalSensor): string => {
  if (!sensor.stands) return ", which was withdrawn: its results are not to be used";
  return sensor.dueOn === null || sensor.stage === "under-way"
    ? ""
    : `, due on ${sensor.dueOn} by ${sensor.from === "own" ? "its own interval" : "your interval for all"}`;
};

/** Ticked already: what the customer would order again today. */
const wanted: readonly DueStage[] = ["withdrawn", "due", "overdue"];

/** Sensors to be requested again together, those that are due ticked already. A plain form: it works without scripts. */
export function DueList({
  sensors,
  mayOrder,
  isPart,
}: {
  readonly sensors: readonly PortalSensor[];
  readonly mayOrder: boolean;
  /** A page of several: what is ticked on another one is not asked for from here. */
  readonly isPart: boolean;
}) {
  const hint = isPart
    ? "Tick what of this page is to be calibrated again."
    : "Tick what is to be calibrated again.";
  return (
    <form action="/portal/request" method="get">
      <FieldGroup legend="Sensors" hint={mayOrder ? hint : undefined}>
        <ul className="stack plain-list">
          {sensors.map((sensor) => {
            const { serial, typeLetter, stage } = sensor;
            const key = `${typeLetter} ${serial}`;
            return (
              <li key={key} className={mayOrder ? "check" : undefined}>
                {mayOrder ? (
                  <input
                    type="checkbox"
                    id={`again-${key}`}
                    name="again"
                    value={serial}
                    defaultChecked={wanted.includes(stage)}
                    aria-label={`Request ${serial} again`}
                  />
                ) : null}
                <div>
                  <Link href={`/portal/sensors/${encodeURIComponent(serial)}`}>{serial}</Link>{" "}
                  <TypeLetter letter={typeLetter} /> <StateMark {...marks[stage]} />
                </div>
                <div className="field-hint">
                  Last measured {sensor.performedOn}, certificate {sensor.certificate}
                  {when(sensor)}.
                </div>
              </li>
            );
          })}
        </ul>
      </FieldGroup>
      {mayOrder ? (
        <div className="form-actions">
          <Button kind="primary" type="submit">
            Request the ticked ones again
          </Button>
        </div>
      ) : null}
    </form>
  );
}
