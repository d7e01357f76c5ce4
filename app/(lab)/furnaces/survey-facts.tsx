import { FieldList } from "@/app/_ui/field-list";
import type { SurveyEvaluation } from "@/lib/domain/furnace/evaluate-survey";

const celsius = (value: number): string => `${value.toFixed(3)} °C`;

const items = (found: SurveyEvaluation): readonly { label: string; value: string }[] => {
  switch (found.kind) {
    case "axial":
      return [
        {
          label: "Half range",
          value: `± ${celsius(found.halfRangeCelsius)} over ${found.lengthMillimetre} mm`,
        },
        { label: "Full range", value: celsius(found.fullRangeCelsius) },
        { label: "u of the half range", value: celsius(found.standardUncertainty) },
        {
          label: "of it repeatability",
          value: `${celsius(found.parts.repeatability)}, ν = ${found.degreesOfFreedom}`,
        },
        { label: "of it drift that may be hidden", value: celsius(found.parts.driftResidue) },
        { label: "of it the probe’s inhomogeneity", value: celsius(found.parts.probeInhomogeneity) },
        { label: "of it the meter", value: celsius(found.parts.meter) },
      ];
    case "positions":
      return [
        { label: "Half range", value: `± ${celsius(found.halfRangeCelsius)}` },
        { label: "Full range", value: celsius(found.fullRangeCelsius) },
        { label: "u of the half range", value: celsius(found.standardUncertainty) },
        {
          label: "Repeatability of a reading",
          value: `${celsius(found.deviation)}, ν = ${found.degreesOfFreedom}`,
        },
      ];
    case "stability":
      return [
        { label: "Half-width", value: `± ${celsius(found.halfWidthCelsius)} in ${found.windowMinutes} min` },
        { label: "Largest change in a window", value: celsius(found.changeCelsius) },
        { label: "Largest peak to peak about its line", value: celsius(found.peakToPeakCelsius) },
        { label: "u of the half-width", value: celsius(found.standardUncertainty) },
      ];
    case "immersion":
      return [
        { label: "Best depth", value: `${found.bestMillimetre} mm` },
        {
          label: `Within ${found.limitCelsius} °C of it`,
          value: `${found.fromMillimetre} mm to ${found.toMillimetre} mm`,
        },
        {
          label: "Half difference of two depths",
          value: `${celsius(found.halfDifferenceCelsius)} for ${found.stepMillimetre} mm`,
        },
        { label: "u of it", value: celsius(found.standardUncertainty) },
      ];
  }
};

/** What a survey found, in numbers. */
export function SurveyFacts({ evaluation }: { readonly evaluation: SurveyEvaluation }) {
  return <FieldList items={items(evaluation)} />;
}
