import { DataTable } from "@/app/_ui/data-table";
import { decimalRoom } from "@/app/_ui/decimal-room";
import { Quantity } from "@/app/_ui/quantity";
import { StateMark } from "@/app/_ui/state-mark";
import type { CertificateRow } from "@/lib/domain/certificate/content";

type Props = {
  readonly rows: readonly CertificateRow[];
  readonly number: string;
  /** Which of several sets they are, from 1; left out: there is one. */
  readonly place?: number;
};

/** The chain of one number: what it stands on, to the SI. */
const chainOf = ({ number, place }: Props, { nominalCelsius }: CertificateRow): string =>
  `/trace/${number}?${place === undefined ? "" : `of=${place}&`}at=${Number(nominalCelsius.replace("−", "-").replaceAll(/[^\d.-]/g, ""))}`;

/** The results of a certificate, word for word as printed. Each error opens the chain behind it. */
export function RowTable(props: Props) {
  const { rows } = props;
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
        ...(rows.some(({ scope }) => scope) ? [{ key: "scope", header: "Scope" }] : []),
        { key: "conformity", header: "Conformity" },
      ]}
      rows={rows.map((row) => ({
        key: `${row.setpoint} ${row.nominalCelsius}`,
        cells:
          row.state === "measured"
            ? {
                setpoint: row.setpoint,
                error: (
                  <Quantity
                    value={row.errorCelsius}
                    uncertainty={row.expandedCelsius}
                    align={errors}
                    href={chainOf(props, row)}
                  />
                ),
                emf: <Quantity value={row.emfMicrovolt} uncertainty={row.expandedMicrovolt} align={emfs} />,
                k: row.coverageFactor,
                scope: row.scope ? <StateMark state={`${row.scope}-scope`} /> : null,
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
