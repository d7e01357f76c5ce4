import type { EvidenceProblem } from "./evaluation";
import type { Evidence, UncertaintyInput } from "./schema";

type Unit = "celsius" | "microvolt" | "relative";

const any: readonly Unit[] = ["celsius", "microvolt", "relative"];

/** Which units an input of the budget can be read in: a relative junction temperature means nothing. */
export function checkUnits(evidence: Evidence): EvidenceProblem[] {
  const inputs: [string, UncertaintyInput, readonly Unit[]][] = [
    ["referenceRepeatability", evidence.referenceRepeatability, any],
    [
      "configuration.characterisation.uniformity",
      evidence.configuration.characterisation.uniformity,
      ["celsius"],
    ],
    [
      "voltmeter.calibrationUncertainty",
      evidence.voltmeter.calibrationUncertainty,
      ["microvolt", "relative"],
    ],
    ["voltmeter.drift", evidence.voltmeter.drift, ["microvolt", "relative"]],
    ["voltmeter.resolution", evidence.voltmeter.resolution, ["microvolt", "relative"]],
    ["scanner.parasitic", evidence.scanner.parasitic, ["microvolt"]],
  ];
  evidence.junctions.forEach((junction, i) => {
    inputs.push([`junctions[${i}].uncertainty`, junction.uncertainty, ["celsius", "microvolt"]]);
  });
  return inputs.flatMap(([path, input, allowed]) =>
    input.kind === "zero" || allowed.includes(input.unit)
      ? []
      : [
          {
            path: `${path}.unit`,
            message: `${input.unit} does not apply here: give it in ${allowed.join(" or ")}.`,
          },
        ],
  );
}
