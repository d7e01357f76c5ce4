import { z } from "zod";
import { day, optionalLine, requiredLine } from "../typed-text";
import { Findings } from "./findings";
import { routes } from "./types";

export const CalibrationInput = z
  .strictObject({
    equipmentId: z.uuid(),
    certificate: requiredLine("Write the certificate's number.", 120),
    issuer: requiredLine("Write who issued it.", 200),
    accreditation: optionalLine(200),
    route: z.enum(routes, "Choose how it reaches the SI."),
    performedOn: day,
    dueOn: day,
    findings: Findings,
  })
  .refine((input) => input.dueOn > input.performedOn, {
    path: ["dueOn"],
    message: "The due day comes after the day it was performed.",
  });
