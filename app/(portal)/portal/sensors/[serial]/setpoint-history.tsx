import { DataTable } from "@/app/_ui/data-table";
import { HistoryChart } from "@/app/_ui/drawing/history-chart";
import { StateMark } from "@/app/_ui/state-mark";
import { scopeWords } from "@/lib/domain/history/scope-words";
import type { HistorySeries } from "@/lib/domain/history/sensor-history";

const signed = (value: number): string =>
  (value < 0 ? "\u2212" : value > 0 ? "+" : "") + Math.abs(value).toFixed(2);

const columns = [
  { key: "certificate", header: "Certificate" },
  { key: "measured", header: "Measured" },
  { key: "error", header: "Error", unit: "°C", align: "number" },
  { key: "expanded", header: "U", unit: "°C", align: "number" },
  { key: "scope", header: "Accreditation" },
  { key: "change", header: "Change since the one before", unit: "°C", align: "number" },
  { key: "said", header: "What that says" },
] as const;

/** The words of the certificate and of the table as CSV; outside the scope by its shape too. */
const InScope = ({ scope }: Pick<HistorySeries["points"][number], "scope">) =>
  scope === "outside" ? (
    <StateMark state="outside-scope" label={`† ${scopeWords(scope)}`} />
  ) : (
    scopeWords(scope)
  );

/** One setpoint through the years: drawn, and as numbers with what a change means. */
export function SetpointHistory({ series }: { readonly series: HistorySeries }) {
  return (
    <div className="stack">
      <h3>At {series.setpoint}</h3>
      <HistoryChart view={series} />
      <DataTable
        caption={`Results at ${series.setpoint}`}
        captionUnseen
        columns={columns}
        rows={series.points
          .toReversed()
          .map(({ certificate, performedOn, set, error, expanded, scope, change }) => ({
            key: `${certificate} ${performedOn} ${set}`,
            cells: {
              certificate: set
                ? `${certificate}, ${set === "as-received" ? "as received" : "after annealing"}`
                : certificate,
              measured: performedOn,
              error,
              expanded,
              scope: <InScope scope={scope} />,
              change: change ? `${signed(change.celsius)} ± ${change.expandedCelsius.toFixed(2)}` : "–",
              said: !change
                ? "The first"
                : change.isMore
                  ? "Changed: more than both uncertainties explain"
                  : "No more than both uncertainties explain",
            },
          }))}
      />
    </div>
  );
}
