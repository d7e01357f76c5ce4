import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { StateMark } from "@/app/_ui/state-mark";
import type { EntryFigures } from "@/lib/domain/nonconformity/figures";
import { impactClassLabels } from "@/lib/domain/nonconformity/labels";

const marks = {
  none: "pass",
  review: "conditional-pass",
  significant: "exception",
  recall: "fail",
  "not-stated": "not-decidable",
} as const;

const columns = [
  { key: "number", header: "Certificate" },
  { key: "order", header: "Order" },
  { key: "results", header: "Results", align: "number" as const },
  { key: "ratio", header: "Largest |δ|/U", align: "number" as const },
  { key: "impact", header: "Class" },
];

const shown = 200;

/** The certificates that stand on it, each with what the change means; and the runs that are not signed off. */
export function ImpactTable({ figures }: { readonly figures: EntryFigures }) {
  const certificates = figures.certificates ?? [];
  const runs = figures.runs ?? [];
  return (
    <>
      {figures.deltaCelsius === undefined || figures.deltaCelsius === null ? null : (
        <p>
          Expected change of the error: {figures.deltaCelsius} °C
          {figures.from || figures.until
            ? `, measured ${figures.from || "…"} to ${figures.until || "…"}`
            : ""}
          .
        </p>
      )}
      {certificates.length === 0 ? null : (
        <DataTable
          caption={`Certificates that stand on it${
            certificates.length > shown ? `: the newest ${shown} of ${certificates.length}` : ""
          }`}
          columns={columns}
          rows={certificates.slice(0, shown).map((one) => ({
            key: one.number,
            tone: one.impact === "recall" || one.impact === "significant" ? "bad" : undefined,
            cells: {
              number: <Link href={`/certificates/${one.number}`}>{one.number}</Link>,
              order: <Link href={`/orders/${one.orderNumber}`}>{one.orderNumber}</Link>,
              results: one.results,
              ratio: one.largestRatio === null ? "" : one.largestRatio.toFixed(2),
              impact: <StateMark state={marks[one.impact]} label={impactClassLabels[one.impact]} />,
            },
          }))}
        />
      )}
      {runs.length === 0 ? null : (
        <p>
          Not signed off yet:{" "}
          {runs.slice(0, shown).map((run) => (
            <span key={run}>
              <Link href={`/runs/${run}`}>{run}</Link>{" "}
            </span>
          ))}
        </p>
      )}
    </>
  );
}
