import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import { may } from "@/lib/domain/staff/permissions";
import { runsView } from "@/lib/views/run/runs";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { celsiusText, runMarks } from "./run-marks";

export const metadata = { title: "Runs" };

const columns = [
  { key: "number", header: "Run" },
  { key: "state", header: "State" },
  { key: "furnace", header: "Furnace" },
  { key: "sensors", header: "Sensors", align: "number" as const },
  { key: "setpoints", header: "Setpoints", unit: "°C" },
  { key: "performer", header: "Performed by" },
  { key: "started", header: "First reading" },
];

export default async function RunsPage() {
  const actor = await requireStaff();
  const { runs, waiting } = await load(runsView(actor));
  const create = may(actor.roles, "run.perform") ? (
    <LinkButton href="/runs/new" kind="primary">
      Plan a run
    </LinkButton>
  ) : null;
  const lead = `${waiting} received sensor${waiting === 1 ? " waits" : "s wait"} for a furnace.`;
  return (
    <Page title="Runs" actions={create} lead={lead}>
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
            sensors: `${run.sensors} of ${run.customers} customer${run.customers === 1 ? "" : "s"}`,
            setpoints: run.setpointsCelsius.map(celsiusText).join(", "),
            performer: run.performer,
            started: run.startedAt ? (
              <Timestamp at={run.startedAt} />
            ) : (
              <span className="quiet">none yet</span>
            ),
          },
        }))}
        empty={
          <EmptyState title="No runs yet">
            A run takes received sensors through a furnace beside references. Plan one once sensors are in.
          </EmptyState>
        }
      />
    </Page>
  );
}
