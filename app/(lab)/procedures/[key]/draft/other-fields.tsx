import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { TextField } from "@/app/_ui/text-field.client";
import type { ProcedureView } from "@/lib/views/procedure";

type Draft = NonNullable<ProcedureView["draft"]>;
const at = "figures.";

const coverages = [
  { value: "student", label: "Student’s t for every budget" },
  { value: "dominant", label: "Dominant rectangles first, then Student’s t" },
  { value: "monte-carlo", label: "The budget drawn (JCGM 101)" },
];
const zeros = [
  { value: "none", label: "Nothing is taken off" },
  { value: "shorted-channel", label: "The mean of a shorted channel" },
];
const orders = [
  { value: "1", label: "Its slope" },
  { value: "2", label: "Its slope and curvature" },
];
const rules = [
  { value: "keep", label: "Each type as it stands" },
  { value: "none", label: "No deviation function" },
  { value: "fixed", label: "A fixed degree" },
  { value: "f-test", label: "The degree that an F test bears out" },
  { value: "residuals", label: "The lowest degree with small residuals" },
];
const methods = [
  { value: "propagated", label: "The whole covariance through the fit" },
  { value: "own-plus-common", label: "Each point’s own part, the common part unreduced" },
];

function Comparison({ comparison }: { readonly comparison: Draft["figures"]["comparison"] }) {
  return (
    <>
      <SelectField
        name={`${at}comparison.zero`}
        label="Zero of the readings"
        choices={zeros}
        defaultValue={comparison.zero}
      />
      <TextField
        name={`${at}comparison.reason`}
        label="Why nothing is taken off"
        optional
        defaultValue={comparison.zero === "none" ? comparison.reason : ""}
        maxLength={400}
      />
      <TextField
        name={`${at}comparison.channel`}
        label="Shorted channel"
        optional
        defaultValue={comparison.zero === "shorted-channel" ? comparison.channel : ""}
        maxLength={40}
      />
      <SelectField
        name={`${at}comparison.carryOrder`}
        label="The emf is carried to the nominal by"
        choices={orders}
        defaultValue={String(comparison.carryOrder)}
      />
    </>
  );
}

function DeviationFunction({ choice }: { readonly choice: Draft["figures"]["deviationFunction"] }) {
  const name = `${at}deviationFunction`;
  return (
    <>
      <SelectField
        name={`${name}.rule`}
        label="Deviation function"
        choices={rules}
        defaultValue={choice.rule}
        hint="For every type alike; types that differ are written as text."
      />
      <NumberField name={`${name}.degree`} label="Degree, or the highest" optional />
      <NumberField
        name={`${name}.limit`}
        label="Limit"
        hint="F test: the probability, such as 0.95. Residuals: how many times a point’s own u."
        optional
      />
      <CheckboxField name={`${name}.isThroughZero`} label="Through 0 µV at 0 °C" />
      <SelectField name={`${name}.method`} label="Its U" choices={methods} defaultValue={choice.method} />
    </>
  );
}

export function OtherFields({ draft }: { readonly draft: Draft }) {
  const { coverage, comparison, deviationFunction } = draft.figures;
  return (
    <div className="fields">
      <SelectField
        name={`${at}coverage`}
        label="Coverage factor k"
        choices={coverages}
        defaultValue={coverage}
      />
      <Comparison comparison={comparison} />
      <DeviationFunction choice={deviationFunction} />
    </div>
  );
}
