import { DataTable } from "@/app/_ui/data-table";
import { Quantity } from "@/app/_ui/quantity";
import { Section } from "@/app/_ui/section";
import { Tabs } from "@/app/_ui/tabs";
import type { EvaluatedScope } from "@/lib/domain/evidence/evaluation";
import { typeset } from "@/lib/metrology/reporting/typeset";
import type { SensorFunctionPage } from "@/lib/views/sensor-function";
import { steps } from "./read-table-choice";

type Props = {
  readonly view: SensorFunctionPage;
  readonly result: Extract<SensorFunctionPage["result"], { kind: "fitted" }>;
};

const units = { celsius: "°C", fahrenheit: "°F" } as const;

/** Outside is marked row by row, as the results are; inside, where the capability stands in place of a smaller U. */
const scopeText = ({ state, isRaised }: EvaluatedScope): string =>
  state === "outside" ? "Outside the scope" : isRaised ? "U raised to the capability" : "Inside";

/** What is added to an indication to get the temperature, at whole degrees of the customer's unit. */
export function CorrectionSection({ view, result }: Props) {
  const { unit, step } = view.choice;
  const here = `/review/${view.number}/${view.tag}`;
  const href = (toUnit: keyof typeof units, toStep: number) => `${here}?unit=${toUnit}&step=${toStep}`;
  return (
    <Section
      title="Correction table"
      note={`Correction = −error: add it to the indication. U with k = ${result.coverageFactor.toFixed(2)}.`}
    >
      <Tabs
        label="Unit of the table"
        current={href(unit, step)}
        tabs={[
          { label: "In °C", href: href("celsius", step) },
          { label: "In °F", href: href("fahrenheit", step) },
        ]}
      />
      <Tabs
        label="Step of the table"
        current={href(unit, step)}
        tabs={steps.map((one) => ({ label: `Every ${one}°`, href: href(unit, one) }))}
      />
      <DataTable
        scrolls
        caption={`Corrections of ${view.tag}, every ${step} ${units[unit]}`}
        columns={[
          { key: "degrees", header: "Temperature", unit: units[unit], align: "number" },
          { key: "correction", header: "Correction", unit: units[unit], align: "number" },
          { key: "expanded", header: "U", unit: units[unit], align: "number" },
          ...(view.isScopeStated ? [{ key: "scope", header: "Scope" }] : []),
        ]}
        rows={result.table.rows.map((row) => ({
          key: String(row.degrees),
          cells: {
            degrees: row.degrees,
            correction: <Quantity value={typeset(row.printedCorrection)} />,
            expanded: <Quantity value={row.printedExpanded} />,
            scope: scopeText(row.scope),
          },
        }))}
      />
    </Section>
  );
}
