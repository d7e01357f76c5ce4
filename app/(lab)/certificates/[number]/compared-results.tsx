import { DataTable } from "@/app/_ui/data-table";
import { Quantity } from "@/app/_ui/quantity";
import { StateMark } from "@/app/_ui/state-mark";
import type { ComparedRow } from "@/lib/domain/amendment/compare-rows";
import type { CertificateRow } from "@/lib/domain/certificate/content";

const error = (row: CertificateRow | null) => {
  if (row === null) return "not stated";
  return row.state === "measured" ? (
    <Quantity value={row.errorCelsius} uncertainty={row.expandedCelsius} />
  ) : (
    row.remark
  );
};

const emf = (row: CertificateRow | null) =>
  row?.state === "measured" ? (
    <Quantity value={row.emfMicrovolt} uncertainty={row.expandedMicrovolt} />
  ) : null;

const conformity = (row: CertificateRow | null) => {
  if (row === null) return "";
  return <StateMark state={row.state === "measured" ? row.conformity.state : row.state} />;
};

/** What a replacement says otherwise, result by result. */
export function ComparedResults({ rows }: { readonly rows: readonly ComparedRow[] }) {
  if (rows.length === 0) return null;
  const changed = rows.filter(({ isChanged }) => isChanged).length;
  return (
    <DataTable
      caption={`Results then and now: ${changed} of ${rows.length} are said otherwise`}
      columns={[
        { key: "result", header: "Result" },
        { key: "earlier", header: "Error ± U then", unit: "°C", align: "number" },
        { key: "later", header: "Error ± U now", unit: "°C", align: "number" },
        { key: "emf-earlier", header: "emf ± U then", unit: "µV", align: "number" },
        { key: "emf-later", header: "emf ± U now", unit: "µV", align: "number" },
        { key: "was", header: "Conformity then" },
        { key: "is", header: "Conformity now" },
        { key: "change", header: "" },
      ]}
      rows={rows.map(({ key, label, earlier, later, isChanged }) => ({
        key,
        tone: isChanged ? "watch" : undefined,
        cells: {
          result: label,
          earlier: error(earlier),
          later: error(later),
          "emf-earlier": emf(earlier),
          "emf-later": emf(later),
          was: conformity(earlier),
          is: conformity(later),
          change: isChanged ? "changed" : "as before",
        },
      }))}
    />
  );
}
