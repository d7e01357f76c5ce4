import { z } from "zod";
import { Evidence, SensorEvidence, TypeLetter } from "../evidence/schema";

const GivenSensitivity = SensorEvidence.shape.givenSensitivity.unwrap();
const { repeatability, inhomogeneity, lead } = SensorEvidence.shape;

/** What the procedure brings to a run's budget, beside what the equipment's certificates say. Stored with the run. */
export const BudgetInputs = z.strictObject({
  /** Name and revision, as it stands on the record. */
  procedure: z.string().min(1).max(200),
  origin: Evidence.shape.origin.default("laboratory"),
  /** For readings that are not the laboratory's own: what was published, what was invented. */
  source: Evidence.shape.source,
  sensitivities: Evidence.shape.sensitivities.default("reference-functions"),
  referenceRepeatability: Evidence.shape.referenceRepeatability,
  sensors: z.partialRecord(TypeLetter, z.strictObject({ repeatability, inhomogeneity, lead })),
  /** By type letter; asked for where `sensitivities` is "given". */
  givenSensitivities: z.partialRecord(TypeLetter, GivenSensitivity).optional(),
});
export type BudgetInputs = z.infer<typeof BudgetInputs>;
export type BudgetInputsInput = z.input<typeof BudgetInputs>;

/** Stored text read back. It was judged when it was written, so a misfit is a defect and throws. */
export const readBudgetInputs = (text: string): BudgetInputs => BudgetInputs.parse(JSON.parse(text));
