import { DataTable } from "@/app/_ui/data-table";
import { DeviationChart } from "@/app/_ui/drawing/deviation-chart";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { setKindLabels } from "@/lib/domain/parts/decide-set";
import { deviationView } from "../deviation-view";
import { LotTables } from "./lot-tables";
import { RowTable } from "./row-table";

/** What the annealing changed, as printed. */
function ChangeTable({ change }: { readonly change: NonNullable<CertificateContent["changes"]>[number] }) {
  return (
    <DataTable
      caption={`Change of ${change.tag} by the annealing`}
      columns={[
        { key: "setpoint", header: "Setpoint" },
        { key: "change", header: "Change", unit: "°C", align: "number" },
        { key: "expanded", header: "U", unit: "°C", align: "number" },
      ]}
      rows={change.rows.map((row) => ({
        key: row.setpoint,
        cells: { setpoint: row.setpoint, change: row.changeCelsius, expanded: row.expandedCelsius },
      }))}
    />
  );
}

/** The results as printed: one table, or one for each sensor, set and run under its name. */
export function ResultTables({ content }: { readonly content: CertificateContent }) {
  const { sets, changes = [], repeats = [], number } = content;
  return (
    <>
      {sets ? (
        sets.map((set, at) => (
          <div key={`${set.item.tag} ${set.kind} ${set.run.number}`}>
            <h3>
              {set.item.tag}, serial {set.item.serial}: {setKindLabels[set.kind].toLowerCase()}, run{" "}
              {set.run.number}
            </h3>
            <RowTable rows={set.rows} number={number} place={at + 1} />
          </div>
        ))
      ) : (
        <>
          <RowTable rows={content.rows} number={number} />
          <DeviationChart view={deviationView("Error over temperature", content.rows)} />
        </>
      )}
      <LotTables content={content} />
      {changes.map((change) => (
        <ChangeTable key={change.tag} change={change} />
      ))}
      {repeats.map((repeat) => (
        <p key={repeat}>{repeat}</p>
      ))}
    </>
  );
}
