import type { Capability } from "../evidence/capability";
import { polynomialTerms } from "./polynomial-terms";

/** A capability in one line, as a schedule of accreditation writes it. */
export const capabilityText = (capability: Capability): string => {
  switch (capability.kind) {
    case "constant":
      return `${capability.expandedCelsius} °C`;
    case "proportional":
      return `${capability.constantCelsius} °C + ${capability.perCelsius} · |t|`;
    case "polynomial":
      return `${polynomialTerms(capability.coefficientsCelsius)} °C, t in °C`;
    case "table":
      return capability.points
        .map(({ celsius, expandedCelsius }) => `${expandedCelsius} °C at ${celsius} °C`)
        .join(", ")
        .concat("; straight between");
  }
};
