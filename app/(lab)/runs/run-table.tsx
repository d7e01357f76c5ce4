import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import type { RunsView } from "@/lib/views/run/runs";
import { celsiusText, runMarks } from "./run-marks";

const columns = [
  { key: "number", header: "Run" },
  { key: "state", header: "State" },
  { key: "furnace", header: "Furnace" },
  { key: "sensors", header: "Sensors", align: "number" as const },
  { key: "setpoints", header: "Setpoints", unit: "°C" },
  { key: "performer", header: "Performed by" },
  { key: "started", header: "First reading" },
];

const none = (
  <EmptyState title="No runs yet">
    A run takes received sensors through a furnace beside references. Plan one once sensors are in.
  </EmptyState>
);

const noneShown = (
  <EmptyState title="Nothing in this filter">There are runs under another filter above.</EmptyState>
);

/** `isAny`: there are runs, whatever of them is shown. */
export function RunTable({ runs, isAny }: Pick<RunsView, "runs" | "isAny">) {
  return (
    <DataTable
      caption="Runs, the newest first"
      captionUnseen
      columns={columns}
      rows={runs.map((run) => ({
        key: run.number,
        cells: {
          number: <Link href={`/runs/${run.number}`}>{run.number}</Link>,
          state: <StateMark {...runMarks(run.state)} />,
          furnace: run.furnace,
          sensors: `${run.sensors}, for ${run.customers} customer${run.customers === 1 ? "" : "s"}`,
          setpoints: run.setpointsCelsius.map(celsiusText).join(", "),
          performer: run.performer,
          started: run.startedAt ? <Timestamp at={run.startedAt} /> : <span className="quiet">none yet</span>,
        },
      }))}
      empty={isAny ? noneShown : none}
    />
  );
}
