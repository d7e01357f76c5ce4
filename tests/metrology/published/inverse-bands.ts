import { polynomial } from "@/lib/metrology/number/polynomial";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { nistInverseBands } from "../vectors/nist-inverse-bands";
import { tableChecks } from "./check";
import { unwrap } from "./unwrap";

const STEPS = 2000;

/** Our start values are NIST's inverse functions: what they miss by, against our own direct function. */
export const inverseBandChecks = tableChecks(
  nistInverseBands,
  ({ type, index, fromCelsius, toCelsius, edge }) => {
    const reference = referenceFunctions[type];
    const inverse = reference.startValues[index];
    let extreme = edge === "lowest" ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
    for (let i = 0; i <= STEPS; i += 1) {
      const celsius = fromCelsius + ((toCelsius - fromCelsius) * i) / STEPS;
      const millivolt = unwrap(emf(reference, celsius)) / 1000;
      const error = polynomial(inverse?.celsius ?? [], millivolt) - celsius;
      extreme = edge === "lowest" ? Math.min(extreme, error) : Math.max(extreme, error);
    }
    return extreme;
  },
);
