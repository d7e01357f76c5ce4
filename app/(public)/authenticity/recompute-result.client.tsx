"use client";
import { DataTable } from "@/app/_ui/data-table";
import type { ComputedNumbers } from "@/lib/documents/authenticity/numbers/compute-numbers";
import { numbersWords } from "@/lib/documents/authenticity/numbers/numbers-words";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import type { Comparison } from "@/lib/domain/certificate/recompute/comparison";

type Props = { readonly content: CertificateContent; readonly result: ComputedNumbers };

const differing = [
  { key: "where", header: "Where" },
  { key: "column", header: "Figure" },
  { key: "printed", header: "Printed", align: "number" as const },
  { key: "recomputed", header: "Computed again", align: "number" as const },
];

const tables = [
  { key: "table", header: "Table" },
  { key: "figures", header: "Figures", align: "number" as const },
  { key: "other", header: "Otherwise than printed", align: "number" as const },
];

const perTable = (comparisons: readonly Comparison[], differences: readonly Comparison[]) =>
  [...new Set(comparisons.map(({ table }) => table))].map((table) => {
    const other = differences.filter((one) => one.table === table).length;
    return {
      key: table,
      tone: other > 0 ? ("bad" as const) : undefined,
      cells: {
        table,
        figures: comparisons.filter((one) => one.table === table).length,
        other: other === 0 ? "none" : other,
      },
    };
  });

/** In words first; then where each difference stands; then what was compared. */
export function RecomputeResult({ content, result }: Props) {
  const { kind, title, sentences } = numbersWords(content.number, result);
  return (
    <>
      <section className="verdict" data-kind={kind} aria-label="Verdict on the numbers">
        <h3 className="standing-word">
          <span className="standing-shape" aria-hidden="true" />
          <strong>{title}</strong>
        </h3>
        {sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </section>
      {result.differences.length > 0 ? (
        <DataTable
          caption="Printed otherwise than it comes out"
          columns={differing}
          rows={result.differences.map((one) => ({
            key: `${one.table} ${one.row} ${one.column}`,
            tone: "bad" as const,
            cells: {
              where: `${one.table}, ${one.row}`,
              column: one.column,
              printed: one.printed || "nothing",
              recomputed: one.recomputed || "nothing",
            },
          }))}
        />
      ) : null}
      {result.comparisons.length > 0 ? (
        <DataTable
          caption="What was compared"
          columns={tables}
          rows={perTable(result.comparisons, result.differences)}
        />
      ) : null}
    </>
  );
}
