import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import type { Mounted, Reference, Sensor } from "./bench";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";
import type { Evidence } from "./schema";

export type Sensitivity = {
  /** Seebeck coefficient at the temperature and at the reference junction's own, µV/°C. */
  readonly microvoltPerCelsius: number;
  readonly atJunctionMicrovoltPerCelsius: number;
};

/** The sensitivity in use: from the reference function, or as a published example gives it. */
export function sensitivityInUse(
  choice: Evidence["sensitivities"],
  mounted: Mounted<Sensor | Reference>,
  celsius: number,
): EvidenceOutcome<Sensitivity> {
  const given = mounted.item.givenSensitivity;
  if (choice === "given") {
    if (!given) return missing(`${mounted.itemPath}.givenSensitivity`, "No sensitivity is given.");
    return got({
      microvoltPerCelsius: 1 / given.celsiusPerMicrovolt,
      atJunctionMicrovoltPerCelsius: 1 / given.celsiusPerMicrovoltAtJunction,
    });
  }
  const here = seebeck(mounted.reference, celsius);
  if (!here.ok) return missing(`${mounted.itemPath}.type`, here.problem.message);
  const atJunction = seebeck(mounted.reference, mounted.junction.celsius);
  if (!atJunction.ok) return missing(`${mounted.placePath}.junction`, atJunction.problem.message);
  return got({
    microvoltPerCelsius: here.value,
    atJunctionMicrovoltPerCelsius: atJunction.value,
  });
}
