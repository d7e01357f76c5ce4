import { DataTable } from "@/app/_ui/data-table";
import { DeviationChart } from "@/app/_ui/drawing/deviation-chart";
import { FieldList } from "@/app/_ui/field-list";
import { Quantity } from "@/app/_ui/quantity";
import { ScopeStanding } from "@/app/_ui/scope-standing";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { deviationView } from "@/app/(lab)/certificates/deviation-view";
import type { ReviewResultPage } from "@/lib/views/review-result";
import { DifferenceLine } from "./difference-line";
import { RemarksAt } from "./remarks";

/** The result as it will be printed, and the same unrounded beside it. */
export function ResultSection({ result }: { readonly result: ReviewResultPage }) {
  const { point } = result;
  if (point.state !== "measured")
    return (
      <Section title="Result">
        <p>
          <StateMark state={point.state} />: {point.reason}
        </p>
      </Section>
    );
  const { printed, conformity } = point;
  return (
    <>
      <Section title="Result" note="As printed; rounded once.">
        <FieldList
          columns
          items={[
            {
              label: "Error, indication minus reference",
              value: (
                <Quantity value={printed.errorCelsius} uncertainty={printed.expandedCelsius} unit="°C" />
              ),
            },
            {
              label: "Difference to the last calibration",
              value: <DifferenceLine difference={result.duty.difference} />,
            },
            {
              label: "emf at the nominal, junction at 0 °C",
              value: (
                <Quantity value={printed.emfMicrovolt} uncertainty={printed.expandedMicrovolt} unit="µV" />
              ),
            },
            {
              label: "Deviation from the reference function",
              value: (
                <Quantity
                  value={printed.deviationMicrovolt}
                  uncertainty={printed.expandedMicrovolt}
                  unit="µV"
                />
              ),
            },
            {
              label: "Reference temperature",
              value: <Quantity value={printed.referenceCelsius} unit="°C" />,
            },
            {
              label: "Coverage",
              value: `k = ${printed.coverageFactor}, effective degrees of freedom ${printed.degreesOfFreedom}`,
            },
            {
              label: "Conformity",
              value: (
                <>
                  <StateMark state={conformity.state} />{" "}
                  {conformity.printed.tolerance ? `tolerance ± ${conformity.printed.tolerance} °C` : ""}
                  {conformity.printed.probability
                    ? `, probability of conformity ${conformity.printed.probability.replace(" ", "\u00a0")}`
                    : ""}
                </>
              ),
            },
            { label: "Accredited scope", value: <ScopeStanding scope={point.scope} /> },
            {
              label: "Unrounded",
              value: `error ${point.errorCelsius} °C, U ${point.expandedCelsius} °C`,
            },
            { label: "Readings in the window", value: point.readings },
          ]}
        />
        <RemarksAt duty={result.duty} place="error" />
        <RemarksAt duty={result.duty} place="emf" />
        <RemarksAt duty={result.duty} place="conformity" />
        {result.rows.some((row) => row.plot) ? (
          <DeviationChart
            view={deviationView(`${result.tag}: error over temperature`, result.rows)}
            caption="All setpoints of this sensor; bars are U, dashed lines the tolerance."
          />
        ) : null}
      </Section>
      <Section title="References" note={`Carried to the nominal over ${point.carriedCelsius.toFixed(3)} °C.`}>
        <DataTable
          caption="What each reference said"
          captionUnseen
          columns={[
            { key: "reference", header: "Reference" },
            { key: "emf", header: "emf", unit: "µV", align: "number" },
            { key: "deviation", header: "Its deviation", unit: "µV", align: "number" },
            { key: "celsius", header: "Temperature", unit: "°C", align: "number" },
          ]}
          rows={point.references.map((reference) => ({
            key: reference.reference,
            cells: {
              reference: reference.reference,
              emf: <Quantity value={reference.emfMicrovolt.toFixed(2)} />,
              deviation: <Quantity value={reference.deviationMicrovolt.toFixed(2)} />,
              celsius: <Quantity value={reference.celsius.toFixed(3)} />,
            },
          }))}
        />
        <RemarksAt duty={result.duty} place="reference" />
      </Section>
    </>
  );
}
