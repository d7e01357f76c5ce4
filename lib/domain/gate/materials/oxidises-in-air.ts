import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import type { ReferenceType } from "../../evidence/schema";
import type { Found, GateCheck } from "../finding";
import { commonPractice } from "../finding";

type Typed = { readonly tag: string; readonly type: ReferenceType };

const assess = (facts: {
  readonly references: readonly Typed[];
  readonly sensors: readonly Typed[];
}): readonly Found[] =>
  [...facts.references, ...facts.sensors]
    .filter(({ type }) => referenceFunctions[type].isOxidisingInAir)
    .map(({ tag, type }) => ({
      code: "oxidises-in-air",
      outcome: "breach",
      subject: tag,
      reason: `tungsten-rhenium of type ${type} oxidises in the furnace's air and is gone.`,
      remedy: "Take it out of the load: it is calibrated in vacuum or inert gas, not here.",
      source: commonPractice,
    }));

export const oxidisesInAir = {
  code: "oxidises-in-air",
  heading: "materials",
  fine: "Nothing in the load burns away in air.",
  source: commonPractice,
  assess,
} as const satisfies GateCheck;
