import { CheckChart } from "@/app/_ui/drawing/check-chart";
import { Section } from "@/app/_ui/section";
import { type CheckChart as Chart, ruleWords } from "@/lib/domain/equipment/check-chart";

const captionOf = ({ quantity, unit, breach, noLimits }: Chart): string =>
  `${quantity}, ${unit}. ${breach ? `Out of control: ${breach}.` : noLimits || "In control."}`;

/** One chart for each quantity that is checked between calibrations, ISO/IEC 17025 6.4.10 and 7.7.1. */
export function ChecksSection({ charts }: { readonly charts: readonly Chart[] }) {
  if (charts.length === 0) return null;
  return (
    <Section
      title="Intermediate checks"
      note="Limits from the checks before the last one, by the moving range."
      wide
    >
      {charts.map((chart) => (
        <CheckChart
          key={`${chart.quantity} ${chart.unit}`}
          view={{
            title: chart.quantity,
            unit: chart.unit,
            limits: chart.limits,
            points: chart.points.map(({ on, value, limit, outcome, rules, isJump }) => ({
              on,
              value,
              limit,
              passed: outcome === "passed",
              broken: [...rules.map((rule) => ruleWords[rule]), ...(isJump ? ["jump"] : [])],
            })),
          }}
          caption={captionOf(chart)}
        />
      ))}
    </Section>
  );
}
