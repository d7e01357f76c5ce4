"use client";
import { DataTable } from "@/app/_ui/data-table";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import type { Comparison } from "@/lib/domain/certificate/recompute/comparison";
import type { Recomputed } from "./recompute-run.client";

type Props = { readonly content: CertificateContent; readonly result: Recomputed };

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

/** What the sealed document says of the file that all was computed from. */
const fileTexts = {
  sealed: "It is the evidence that was sealed with this certificate.",
  another:
    "The sealed document names another file by its SHA-256: this one is not the evidence it was issued with.",
  unsaid:
    "The document was sealed before documents named their evidence: of the inputs beside the readings, it says nothing.",
} as const;

const verdictOf = ({ problems, differences, comparisons, unproved, file }: Recomputed) => {
  if (problems.length > 0) return { kind: "look", text: "The numbers could not be computed again" };
  const other = file === "another" ? ", from another file than the one sealed with them" : "";
  if (differences.length > 0)
    return {
      kind: "bad",
      text: `${differences.length} of ${comparisons.length} printed figures come out otherwise${other}`,
    };
  if (unproved.length > 0)
    return {
      kind: "bad",
      text: `The figures come out again${other}, but not all readings are those the laboratory recorded`,
    };
  if (file === "another")
    return {
      kind: "bad",
      text: "The figures come out again, but from another file than the one sealed with them",
    };
  return { kind: "good", text: `All ${comparisons.length} printed figures come out again` };
};

/** In words first; then where each difference stands; then what was compared. */
export function RecomputeResult({ content, result }: Props) {
  const { kind, text } = verdictOf(result);
  const { engine, readings } = result;
  return (
    <>
      <section className="verdict" data-kind={kind} aria-label="Verdict on the numbers">
        <h3 className="standing-word">
          <span className="standing-shape" aria-hidden="true" />
          <strong>{text}</strong>
        </h3>
        {[...result.problems, ...result.unproved].map((problem) => (
          <p key={problem}>{problem}.</p>
        ))}
        <p>{fileTexts[result.file]}</p>
        <p>
          From {readings} readings of {content.number}, by the engine {engine.here}
          {engine.here === engine.printed
            ? ", as when it was printed"
            : `; it was printed by ${engine.printed}`}
          . The same program computed both: this shows that paper and readings belong together, not that the
          program is right.
        </p>
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
