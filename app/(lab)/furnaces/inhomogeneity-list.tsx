import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { Timestamp } from "@/app/_ui/timestamp";
import type { InhomogeneityTestView } from "@/lib/views/inhomogeneity-tests";
import { decideInhomogeneityAction } from "./actions";
import { DecisionForm } from "./decision-form";
import { DecisionMark } from "./decision-mark";

const methods = { scan: "moved over", "two-immersions": "two immersions," } as const;

const columns = [
  { key: "tag", header: "Thermocouple" },
  { key: "performedOn", header: "Tested" },
  { key: "how", header: "How" },
  { key: "spread", header: "Half-width", unit: "% of the emf", align: "number" as const },
  { key: "u", header: "u", unit: "% of the emf", align: "number" as const },
  { key: "state", header: "State" },
];

const percent = (relative: number): string => (relative * 100).toFixed(4);

/** Newest first; those that wait for this person have their decision below the table. */
export function InhomogeneityList({ tests }: { readonly tests: readonly InhomogeneityTestView[] }) {
  return (
    <>
      <DataTable
        caption="Inhomogeneity tests"
        captionUnseen
        columns={columns}
        rows={tests.map((test) => ({
          key: test.id,
          cells: {
            tag: <Link href={test.page}>{test.tag}</Link>,
            performedOn: <Timestamp at={test.performedOn} precision="day" />,
            how: `${methods[test.evaluation.method]} ${test.evaluation.scannedMillimetre} mm at ${test.celsius} °C`,
            spread: `± ${percent(test.evaluation.relativeHalfWidth)}`,
            u: percent(test.evaluation.standardUncertainty),
            state: (
              <>
                <DecisionMark state={test.state} />
                {test.reason ? <div className="quiet">{test.reason}</div> : null}
              </>
            ),
          },
        }))}
        empty={
          <EmptyState title="No test yet">
            Until a thermocouple is tested, the procedure’s rule for its type stands in the budget.
          </EmptyState>
        }
      />
      {tests
        .filter(({ mayDecide }) => mayDecide)
        .map((test) => (
          <DecisionForm
            key={test.id}
            id={test.id}
            action={decideInhomogeneityAction}
            what={`the test of ${test.tag} on ${test.performedOn}`}
            acceptHint="Its spread replaces the assumed rule in runs made from now on."
          />
        ))}
    </>
  );
}
