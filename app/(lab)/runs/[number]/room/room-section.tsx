import { DataTable } from "@/app/_ui/data-table";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import type { Actor } from "@/lib/domain/staff/actor";
import { type RunRoomView, runRoomView } from "@/lib/views/run/run-room";
import { load } from "@/lib/web/load";
import { RoomForm } from "./room-form";

const moments = { start: "Start", end: "End" } as const;

function RoomTable({ records }: { readonly records: RunRoomView["records"] }) {
  return (
    <DataTable
      caption="Room during the run"
      captionUnseen
      columns={[
        { key: "moment", header: "Moment" },
        { key: "celsius", header: "Temperature", align: "number" as const },
        { key: "humidity", header: "Relative humidity", align: "number" as const },
        { key: "instrument", header: "Instrument" },
        { key: "by", header: "Recorded" },
      ]}
      rows={records.map((one) => ({
        key: one.key,
        tone: one.isCounted && one.outside ? ("watch" as const) : undefined,
        cells: {
          moment: one.isCounted ? moments[one.moment] : `${moments[one.moment]}, recorded again since`,
          celsius: one.celsius,
          humidity: one.humidity || "not told",
          instrument: `${one.instrument}, U ${one.expandedCelsius}`,
          by: (
            <>
              {one.by}, <Timestamp at={one.at} precision="minute" />
              {one.reason === "" ? null : <p className="quiet">Again: {one.reason}</p>}
            </>
          ),
        },
      }))}
    />
  );
}

type Props = { readonly actor: Actor; readonly number: string };

/** The room of a run: as recorded, corrected by the instrument's certificate; and the form while the run is open. */
export async function RoomSection({ actor, number }: Props) {
  const view = await load(runRoomView(actor, number));
  const outside = view.records.filter((one) => one.isCounted && one.outside !== null);
  return (
    <Section title="Room" note="Corrected by the instrument’s certificate. It stands on the certificate.">
      {outside.map((one) => (
        <Notice key={one.key} kind="caution" title={`Outside the procedure’s limits at the ${one.moment}`}>
          {one.outside} ({one.limitsFrom}). Let the room come within them before going on and record it again;
          what was measured outside them stands as a deviation on the certificate. If results may be affected,
          report nonconforming work below.
        </Notice>
      ))}
      {view.records.length === 0 ? <p>Not recorded.</p> : <RoomTable records={view.records} />}
      {view.mayRecord ? <RoomForm view={view} /> : null}
    </Section>
  );
}
