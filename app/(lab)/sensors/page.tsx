import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { FindForm } from "@/app/_ui/find-form";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { PageTurns } from "@/app/_ui/page-turns";
import { StateMark } from "@/app/_ui/state-mark";
import { TypeLetter } from "@/app/_ui/type-letter";
import { isoDay } from "@/lib/domain/calibration/due";
import { countText } from "@/lib/domain/list/page";
import { addressOf, changed } from "@/lib/domain/list/query";
import { readSensorQuery } from "@/lib/domain/sensor/list-query";
import { sensorsView } from "@/lib/views/sensor/sensors";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { NoSensors } from "./no-sensors";
import { SensorFilters, sensorFilterLabels } from "./sensor-filters";
import { sensorMarks } from "./sensor-marks";

export const metadata = { title: "Sensors" };

const columns = [
  { key: "tag", header: "Sensor" },
  { key: "serial", header: "Serial" },
  { key: "type", header: "Type" },
  { key: "order", header: "Order" },
  { key: "customer", header: "Customer" },
  { key: "received", header: "Received" },
  { key: "state", header: "State" },
];

type Props = {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export default async function SensorsPage({ searchParams }: Props) {
  const actor = await requireStaff();
  const query = readSensorQuery(await searchParams);
  const list = await load(sensorsView(actor, query, isoDay(new Date())));
  const { find, after: _, before: __, ...kept } = query;
  return (
    <Page
      title="Sensors"
      lead="What customers sent to be calibrated, by the laboratory’s own tag."
      actions={
        <>
          {/* Loaded, not routed to: only then may that page use the camera. */}
          <a className="button" data-kind="quiet" href="/sensors/find">
            Find by label
          </a>
          <LinkButton href="/sensors/policy">Limits of intake</LinkButton>
        </>
      }
    >
      <FindForm
        path="/sensors"
        name="find"
        label="Part of the serial, or beginning of the tag"
        value={find ?? ""}
        kept={kept}
      />
      <SensorFilters query={query} list={list} />
      <DataTable
        caption={`Sensors: ${sensorFilterLabels[list.filter].toLowerCase()}`}
        captionUnseen
        columns={columns}
        rows={list.sensors.map((sensor) => ({
          key: sensor.tag,
          cells: {
            tag: <Link href={`/sensors/${sensor.tag}`}>{sensor.tag}</Link>,
            serial: (
              <>
                {sensor.serial}
                {sensor.certifiedAs.length > 0 ? (
                  <span className="quiet"> certified as {sensor.certifiedAs.join(", ")}</span>
                ) : null}
              </>
            ),
            type: <TypeLetter letter={sensor.typeLetter} />,
            order: <Link href={`/orders/${sensor.order}`}>{sensor.order}</Link>,
            customer: (
              <Link href={addressOf("/sensors", changed(query, { customer: sensor.customerId }))}>
                {sensor.customer}
              </Link>
            ),
            received: sensor.receivedOn,
            state: <StateMark {...sensorMarks(sensor.state)} />,
          },
        }))}
        empty={<NoSensors list={list} query={query} />}
      />
      <PageTurns
        path="/sensors"
        query={query}
        next={list.next}
        previous={list.previous}
        of="sensors"
        total={list.count > 0 ? `${countText(list.count)} sensor${list.count === 1 ? "" : "s"}` : undefined}
      />
    </Page>
  );
}
