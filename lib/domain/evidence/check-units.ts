import type { EvidenceProblem } from "./evaluation";
import type { Evidence } from "./schema";
import type {
  FurnaceInput,
  InhomogeneityInput,
  RepeatabilityInput,
  UncertaintyInput,
} from "./uncertainty-input";

type Unit = "celsius" | "microvolt" | "relative";

const any: readonly Unit[] = ["celsius", "microvolt", "relative"];

const celsius: readonly Unit[] = ["celsius"];
const electric: readonly Unit[] = ["microvolt", "relative"];
const atJunction: readonly Unit[] = ["celsius", "microvolt"];

type Input = UncertaintyInput | FurnaceInput | InhomogeneityInput | RepeatabilityInput;

/** Which units an input of the budget can be read in: a relative junction temperature means nothing. */
export function checkUnits(evidence: Evidence): EvidenceProblem[] {
  const { voltmeter, scanner } = evidence;
  const at = "configuration.characterisation";
  const { uniformity, axial, radial, gradient } = evidence.configuration.characterisation;
  const inputs: [string, Input, readonly Unit[]][] = [
    ["referenceRepeatability", evidence.referenceRepeatability, any],
    [`${at}.uniformity`, uniformity, celsius],
    [`${at}.axial`, axial, celsius],
    [`${at}.radial`, radial, celsius],
    [`${at}.gradient`, gradient, celsius],
    ["stability", evidence.stability, celsius],
    ["heaterPickup", evidence.heaterPickup, electric],
    ["voltmeter.calibrationUncertainty", voltmeter.calibrationUncertainty, electric],
    ["voltmeter.drift", voltmeter.drift, electric],
    ["voltmeter.resolution", voltmeter.resolution, electric],
    ["scanner.parasitic", scanner.parasitic, ["microvolt"]],
  ];
  evidence.junctions.forEach((junction, i) => {
    inputs.push([`junctions[${i}].uncertainty`, junction.uncertainty, atJunction]);
    inputs.push([`junctions[${i}].spread`, junction.spread, atJunction]);
  });
  return inputs.flatMap(([path, input, allowed]) =>
    !("unit" in input) || allowed.includes(input.unit)
      ? []
      : [
          {
            path: `${path}.unit`,
            message: `${input.unit} does not apply here: give it in ${allowed.join(" or ")}.`,
          },
        ],
  );
}
