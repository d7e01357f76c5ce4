import { z } from "zod";
import { lines, requiredLine, requiredLines, rowVersion } from "../typed-text";
import { Figures } from "./figures-schema";

const key = z
  .string("Write a short name.")
  .trim()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "Small letters, figures and hyphens, such as tube-furnace.")
  .max(60, "At most 60 characters.");

/** A procedure of the laboratory's own, drafted as a copy of one that is current. */
export const RecordProcedureInput = z.strictObject({
  key,
  title: requiredLine("Write the title as it stands on records.", 120),
  copyOf: key,
});

export const DraftRevisionInput = z.strictObject({ key });

const revisionId = z.uuid("Choose a revision.");

/** Left out: stays as it is. */
export const ChangeDraftInput = z.strictObject({
  id: revisionId,
  version: rowVersion,
  /** The figures that differ from laboratory to laboratory, from their form. */
  figures: Figures.optional(),
  /** The whole of the budget's inputs, as JSON text. */
  budgetText: z.string().max(200_000, "At most 200 000 characters.").optional(),
  /** What the gate asks differently by this procedure, as JSON text. */
  policyText: z.string().max(100_000, "At most 100 000 characters.").optional(),
  change: lines(2000).optional(),
  verification: lines(4000).optional(),
});

export const MakeCurrentInput = z.strictObject({ id: revisionId, version: rowVersion });

/** 7.2.1.5: what shows that the method performs as claimed. */
export const Verification = requiredLines(
  "Write what shows that it performs as claimed (ISO/IEC 17025:2017, 7.2.1.5): what was measured, when, with what result.",
  4000,
);
