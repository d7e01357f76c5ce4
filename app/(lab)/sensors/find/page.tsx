import Link from "next/link";
import { redirect } from "next/navigation";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Button } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { FieldFrame } from "@/app/_ui/field-frame";
import { Page } from "@/app/_ui/page";
import { StateMark } from "@/app/_ui/state-mark";
import { TypeLetter } from "@/app/_ui/type-letter";
import { findSensorView } from "@/lib/views/sensor/find";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { sensorMarks } from "../sensor-marks";
import { Camera } from "./camera.client";
import { ScanField } from "./scan-field.client";

export const metadata = { title: "Find a sensor" };

type Props = { readonly searchParams: Promise<{ readonly q?: string | string[]; readonly camera?: string }> };

const columns = [
  { key: "tag", header: "Sensor" },
  { key: "serial", header: "Serial" },
  { key: "type", header: "Type" },
  { key: "order", header: "Order" },
  { key: "customer", header: "Customer" },
  { key: "state", header: "State" },
];

/** Not through the router: whether a page may use the camera is settled when it is loaded. */
const CameraLink = () => (
  <a className="button" data-kind="quiet" href="/sensors/find?camera=1">
    Use the camera
  </a>
);

export default async function FindSensorPage({ searchParams }: Props) {
  const actor = await requireStaff();
  const { q, camera } = await searchParams;
  const typed = typeof q === "string" ? q : "";
  const { what, sensors } = await load(findSensorView(actor, typed));
  const [only] = sensors;
  if (only && sensors.length === 1) redirect(`/sensors/${only.tag}`);
  const nothing = what.kind !== "nothing" && sensors.length === 0;
  const message =
    what.kind === "refused" ? what.message : `There is no sensor with the tag or serial “${typed}”.`;
  return (
    <Page
      title="Find a sensor"
      crumbs={<Breadcrumb trail={[{ label: "Sensors", href: "/sensors" }]} />}
      lead="Scan its label, or type its tag or serial."
    >
      <form method="get" action="/sensors/find" className="form" aria-label="Find a sensor">
        <FieldFrame id="scan" label="Label, tag or serial" error={nothing ? message : undefined}>
          <ScanField id="scan" isRefused={nothing} />
        </FieldFrame>
        <div className="form-actions">
          <Button type="submit" kind="primary">
            Find it
          </Button>
          {camera ? null : <CameraLink />}
        </div>
      </form>
      {camera ? <Camera /> : null}
      {sensors.length > 1 ? (
        <DataTable
          caption={`Sensors with the serial “${typed}”, the newest first`}
          columns={columns}
          rows={sensors.map((sensor) => ({
            key: sensor.tag,
            cells: {
              tag: <Link href={`/sensors/${sensor.tag}`}>{sensor.tag}</Link>,
              serial: sensor.serial,
              type: <TypeLetter letter={sensor.typeLetter} />,
              order: <Link href={`/orders/${sensor.order}`}>{sensor.order}</Link>,
              customer: sensor.customer,
              state: <StateMark {...sensorMarks(sensor.state)} />,
            },
          }))}
        />
      ) : null}
    </Page>
  );
}
