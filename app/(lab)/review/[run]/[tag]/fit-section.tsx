import { DataTable } from "@/app/_ui/data-table";
import { FunctionChart } from "@/app/_ui/drawing/function-chart";
import { Notice } from "@/app/_ui/notice";
import { Quantity } from "@/app/_ui/quantity";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import type { FunctionChoice } from "@/lib/domain/evidence/function-choice";
import type { SensorFunctionPage } from "@/lib/views/sensor-function";

type Props = {
  readonly tag: string;
  readonly result: Extract<SensorFunctionPage["result"], { kind: "fitted" }>;
  readonly rule: FunctionChoice;
};

/** 5.9e-2 as 5.9 × 10⁻². */
function Scientific({ text }: { readonly text: string }) {
  const [mantissa = text, exponent] = text.split("e");
  if (exponent === undefined || Number(exponent) === 0 || Number(mantissa) === 0)
    return <Quantity value={String(Number(mantissa))} />;
  return (
    <span>
      <Quantity value={mantissa} /> × 10<sup>{String(Number(exponent)).replace("-", "\u2212")}</sup>
    </span>
  );
}

const powers = ["µV", "µV/°C", "µV/°C²", "µV/°C³"];

const degreeText = (rule: FunctionChoice["degreeRule"]): string => {
  switch (rule.kind) {
    case "fixed":
      return `Degree ${rule.degree}, as the procedure fixes it. `;
    case "f-test":
      return `The highest degree up to ${rule.maximumDegree} whose last term an F-test at ${Number((100 * rule.probability).toPrecision(6))} % keeps. `;
    case "residuals":
      return `The lowest degree up to ${rule.maximumDegree} at which no residual exceeds ${rule.limit} times the point's own u. `;
  }
};

const ruleText = ({ isThroughZero, degreeRule }: FunctionChoice): string =>
  `${isThroughZero ? "Through 0 µV at 0 °C. " : ""}${degreeText(degreeRule)}Errors that all points share, such as the reference's certificate, do not average away.`;

/** The fit as a person judges it: the curve, the residuals, the degrees tried. */
export function FitSection({ tag, result, rule }: Props) {
  const { fitted, curve, coefficients } = result;
  return (
    <Section title="Fit" note={ruleText(rule)} wide>
      {fitted.isDegreeRuleMet ? null : (
        <Notice kind="caution" title="The curve does not follow the points">
          No allowed degree brings every residual within the limit. The scatter about the curve was taken into
          U; use the measured points themselves where they suffice.
        </Notice>
      )}
      <FunctionChart
        view={{
          title: `${tag}: deviation from the reference function`,
          unit: "µV",
          quantity: "deviation",
          curve,
          points: fitted.points,
        }}
        caption={`The band is U, k = ${result.coverageFactor.toFixed(2)}. No value above the highest measured point, nor below ${fitted.below ? "what was agreed" : "the lowest"}.`}
      />
      <DataTable
        caption="Coefficients of D(t) = Σ a·tⁱ, t in °C"
        columns={[
          { key: "power", header: "Power i", align: "number" },
          { key: "value", header: "a", align: "number" },
          { key: "unit", header: "Unit" },
        ]}
        rows={coefficients.texts.map((text, power) => ({
          key: String(power),
          cells: { power, value: <Scientific text={text} />, unit: powers[power] ?? `µV/°C to the ${power}` },
        }))}
      />
      <DataTable
        caption="Degrees tried"
        columns={[
          { key: "degree", header: "Degree", align: "number" },
          { key: "chi", header: "χ²", align: "number" },
          { key: "freedom", header: "Degrees of freedom", align: "number" },
          { key: "largest", header: "Largest residual over u", align: "number" },
          { key: "chosen", header: "Taken" },
        ]}
        rows={fitted.degreesTried.map((one) => ({
          key: String(one.degree),
          cells: {
            degree: one.degree,
            chi: one.chiSquare.toPrecision(3),
            freedom: one.degreesOfFreedom,
            largest: one.largestNormalisedResidual.toFixed(2),
            chosen: one.isChosen ? <StateMark state="done" label="Taken" /> : "",
          },
        }))}
      />
    </Section>
  );
}
