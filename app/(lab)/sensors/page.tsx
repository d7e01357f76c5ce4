import Link from "next/link";
import { Button } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { StateMark } from "@/app/_ui/state-mark";
import { Tabs } from "@/app/_ui/tabs";
import { TextField } from "@/app/_ui/text-field.client";
import { TypeLetter } from "@/app/_ui/type-letter";
import { sensorStateLabels } from "@/lib/domain/sensor/labels";
import { type SensorFilter, sensorFilters, sensorsView } from "@/lib/views/sensor/sensors";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { sensorMarks } from "./sensor-marks";

export const metadata = { title: "Sensors" };

const labels: Readonly<Record<SensorFilter, string>> = { here: "Here", ...sensorStateLabels, all: "All" };

const columns = [
  { key: "tag", header: "Sensor" },
  { key: "serial", header: "Serial" },
  { key: "type", header: "Type" },
  { key: "order", header: "Order" },
  { key: "customer", header: "Customer" },
  { key: "received", header: "Received" },
  { key: "state", header: "State" },
];

type Props = { readonly searchParams: Promise<{ readonly show?: string; readonly find?: string }> };

const hrefOf = (filter: SensorFilter, find: string): string => {
  const query = new URLSearchParams({
    ...(filter === "here" ? {} : { show: filter }),
    ...(find ? { find } : {}),
  });
  return query.size === 0 ? "/sensors" : `/sensors?${query}`;
};

export default async function SensorsPage({ searchParams }: Props) {
  const actor = await requireStaff();
  const { show, find } = await searchParams;
  const filter = sensorFilters.find((name) => name === show) ?? "here";
  const search = typeof find === "string" ? find.trim().slice(0, 120) : "";
  const list = await load(sensorsView(actor, filter, search));
  return (
    <Page title="Sensors" lead="What customers sent to be calibrated, by the laboratory’s own tag.">
      <search>
        <form action="/sensors" className="form-inline">
          {filter === "here" ? null : <input type="hidden" name="show" value={filter} />}
          <TextField
            name="find"
            label="Serial or tag contains"
            type="search"
            defaultValue={search}
            optional
          />
          <Button type="submit">Find</Button>
        </form>
      </search>
      <Tabs
        label="Sensors by state"
        current={hrefOf(filter, search)}
        tabs={list.filters.map(({ name, count }) => ({
          label: labels[name],
          href: hrefOf(name, search),
          count,
        }))}
      />
      <DataTable
        caption={`Sensors: ${labels[filter].toLowerCase()}`}
        captionUnseen
        columns={columns}
        rows={list.sensors.map((sensor) => ({
          key: sensor.tag,
          cells: {
            tag: <Link href={`/sensors/${sensor.tag}`}>{sensor.tag}</Link>,
            serial: sensor.serial,
            type: <TypeLetter letter={sensor.typeLetter} />,
            order: <Link href={`/orders/${sensor.order}`}>{sensor.order}</Link>,
            customer: sensor.customer,
            received: sensor.receivedOn,
            state: <StateMark {...sensorMarks(sensor.state)} />,
          },
        }))}
        empty={
          <EmptyState title={search ? `No sensor here contains “${search}”` : "No sensors here"}>
            Sensors appear here once they are taken in for an accepted order. Open the order, then Take
            sensors in.
          </EmptyState>
        }
      />
      {list.leftOut > 0 ? (
        <p className="quiet">{list.leftOut} more are not listed; narrow the search.</p>
      ) : null}
    </Page>
  );
}
