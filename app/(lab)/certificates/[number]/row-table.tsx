import { DataTable } from "@/app/_ui/data-table";
import { decimalRoom } from "@/app/_ui/decimal-room";
import { Quantity } from "@/app/_ui/quantity";
import { StateMark } from "@/app/_ui/state-mark";
import type { CertificateRow } from "@/lib/domain/certificate/content";

/** The results of a certificate, word for word as printed. */
export function RowTable({ rows }: { readonly rows: readonly CertificateRow[] }) {
  const measured = rows.filter((row) => row.state === "measured");
  const errors = decimalRoom(measured.map((row) => row.errorCelsius));
  const emfs = decimalRoom(measured.map((row) => row.emfMicrovolt));
  return (
    <DataTable
      caption="Results"
      captionUnseen
      columns={[
        { key: "setpoint", header: "Setpoint" },
        { key: "error", header: "Error ± U", unit: "°C", align: "number" },
        { key: "emf", header: "emf ± U", unit: "µV", align: "number" },
        { key: "k", header: "k", align: "number" },
        { key: "conformity", header: "Conformity" },
      ]}
      rows={rows.map((row) => ({
        key: `${row.setpoint} ${row.nominalCelsius}`,
        cells:
          row.state === "measured"
            ? {
                setpoint: row.setpoint,
                error: <Quantity value={row.errorCelsius} uncertainty={row.expandedCelsius} align={errors} />,
                emf: <Quantity value={row.emfMicrovolt} uncertainty={row.expandedMicrovolt} align={emfs} />,
                k: row.coverageFactor,
                conformity: (
                  <>
                    <StateMark state={row.conformity.state} />{" "}
                    {row.conformity.tolerance ? `tolerance ${row.conformity.tolerance} °C` : ""} {row.remark}
                  </>
                ),
              }
            : { setpoint: row.setpoint, conformity: <StateMark state={row.state} label={row.remark} /> },
      }))}
    />
  );
}
