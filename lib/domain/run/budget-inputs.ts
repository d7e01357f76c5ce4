import { z } from "zod";
import { Evidence, GivenSensitivity, ReferenceType, SensorEvidence, TypeLetter } from "../evidence/schema";
import { unstated } from "../evidence/unstated";

const { repeatability, inhomogeneity, lead, immersion, shunting, hysteresis, deviationFunction } =
  SensorEvidence.shape;
const { line, ...rest } = unstated("not stated by this run's procedure");

/**
 * What the procedure brings to a run's budget, beside what the equipment's certificates say. Stored with the
 * run; what a run recorded earlier does not know stands as zero, and says so.
 */
export const BudgetInputs = z.strictObject({
  /** Name and revision, as it stands on the record. */
  procedure: z.string().min(1).max(200),
  origin: Evidence.shape.origin.default("laboratory"),
  /** For readings that are not the laboratory's own: what was published, what was invented. */
  source: Evidence.shape.source,
  sensitivities: Evidence.shape.sensitivities.default("reference-functions"),
  referenceRepeatability: Evidence.shape.referenceRepeatability,
  heaterPickup: Evidence.shape.heaterPickup.default(rest.heaterPickup),
  stability: Evidence.shape.stability.default(rest.stability),
  correlation: Evidence.shape.correlation.default(rest.correlation),
  comparison: Evidence.shape.comparison.default(rest.comparison),
  coverage: Evidence.shape.coverage.default(rest.coverage),
  sensors: z.partialRecord(
    TypeLetter,
    z.strictObject({
      repeatability,
      inhomogeneity,
      lead,
      immersion: immersion.default(line),
      shunting: shunting.default(line),
      hysteresis: hysteresis.default(line),
      deviationFunction,
    }),
  ),
  /** By type; asked for where `sensitivities` is "given". */
  givenSensitivities: z.partialRecord(ReferenceType, GivenSensitivity).optional(),
});
export type BudgetInputs = z.infer<typeof BudgetInputs>;
export type BudgetInputsInput = z.input<typeof BudgetInputs>;

/** Stored text read back. It was judged when it was written, so a misfit is a defect and throws. */
export const readBudgetInputs = (text: string): BudgetInputs => BudgetInputs.parse(JSON.parse(text));
