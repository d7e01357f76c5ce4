import { DataTable } from "@/app/_ui/data-table";
import { Disclosure } from "@/app/_ui/disclosure";
import { BudgetChart } from "@/app/_ui/drawing/budget-chart";
import { FieldList } from "@/app/_ui/field-list";
import { Quantity } from "@/app/_ui/quantity";
import { Section } from "@/app/_ui/section";
import type { Budget, EvaluatedContribution } from "@/lib/domain/evidence/evaluation";
import { wholeFreedom } from "@/lib/domain/review/whole-freedom";
import type { ReviewResultPage } from "@/lib/views/review-result";
import { MonteCarlo } from "./monte-carlo.client";
import { RemarksAt } from "./remarks";

/** Three significant digits; the unrounded figure is in the evidence. */
const three = (value: number): string => (value === 0 ? "0" : String(Number(value.toPrecision(3))));

const acts = ({ effect }: EvaluatedContribution): boolean => effect !== 0;

const columns = [
  { key: "quantity", header: "Quantity" },
  { key: "share", header: "Share", unit: "% of u²", align: "number" as const },
  { key: "u", header: "u", align: "number" as const },
  { key: "distribution", header: "Distribution" },
  { key: "sensitivity", header: "Sensitivity", align: "number" as const },
  { key: "effect", header: "Contribution", align: "number" as const },
  { key: "freedom", header: "Degrees of freedom", align: "number" as const },
  { key: "source", header: "From" },
];

function BudgetTable({ budget, caption, dominant }: { budget: Budget; caption: string; dominant: string }) {
  return (
    <DataTable
      caption={caption}
      columns={columns}
      rows={budget.contributions.filter(acts).map((line) => ({
        key: line.key,
        tone: line.key === dominant ? "watch" : undefined,
        cells: {
          quantity: (
            <>
              {line.label} ({line.symbol}){line.key === dominant ? ", the largest" : ""}
            </>
          ),
          share: <Quantity value={(line.share * 100).toFixed(1)} />,
          u: <Quantity value={three(line.standardUncertainty)} unit={line.unit} />,
          distribution: line.distribution,
          sensitivity: (
            <Quantity
              value={three(line.sensitivity)}
              unit={line.sensitivityUnit === "1" ? undefined : line.sensitivityUnit}
            />
          ),
          effect: <Quantity value={three(line.effect)} unit={budget.unit} />,
          freedom: wholeFreedom(line.degreesOfFreedom),
          source: line.source,
        },
      }))}
      foot={{
        key: "combined",
        cells: {
          quantity: "Combined",
          effect: <Quantity value={three(budget.combined)} unit={budget.unit} />,
          freedom: wholeFreedom(budget.degreesOfFreedom),
        },
      }}
    />
  );
}

/** What was looked at and does not act here, each with its reason: shut, but never left out. */
function ZeroLines({ budget }: { budget: Budget }) {
  const lines = budget.contributions.filter((line) => !acts(line));
  if (lines.length === 0) return null;
  return (
    <Disclosure summary={`${lines.length} lines at zero, with the reason of each`}>
      <FieldList
        items={lines.map(({ label, symbol, source }) => ({ label: `${label} (${symbol})`, value: source }))}
      />
    </Disclosure>
  );
}

const bars = (title: string, budget: Budget) => ({
  title,
  unit: budget.unit,
  contributions: budget.contributions.filter(acts),
  combined: budget.combined,
});

/** The budget line by line, with what dominates and how k was found, and drawn instead of combined. */
export function BudgetSection({ result }: { readonly result: ReviewResultPage }) {
  const { point, dominant } = result;
  if (point.state !== "measured") return null;
  return (
    <Section
      title="Budget"
      note={`Largest: ${dominant}. k = ${point.printed.coverageFactor}: ${point.coverage.criterion}.`}
      wide
    >
      <MonteCarlo
        id={Object.values(result.duty.ids).join(" ")}
        point={point}
        stream={result.neighbours.place}
      />
      <RemarksAt duty={result.duty} place="uncertainty" />
      <BudgetChart
        view={bars("Reference temperature, °C", point.temperatureBudget)}
        caption="Temperature of the furnace at the sensor, °C: largest first."
        table="none"
      />
      <BudgetTable
        budget={point.temperatureBudget}
        caption="Temperature of the furnace at the sensor"
        dominant={point.dominant}
      />
      <ZeroLines budget={point.temperatureBudget} />
      <BudgetChart
        view={bars("emf of the sensor, µV", point.emfBudget)}
        caption="emf of the sensor at the nominal, µV: largest first."
        table="none"
      />
      <BudgetTable
        budget={point.emfBudget}
        caption="emf of the sensor at the nominal"
        dominant={point.dominant}
      />
      <ZeroLines budget={point.emfBudget} />
    </Section>
  );
}
