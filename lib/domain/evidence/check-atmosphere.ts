import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import type { EvidenceProblem } from "./evaluation";
import type { Evidence } from "./schema";

/**
 * Tungsten-rhenium (types C and A) oxidises in hot air and is gone; the furnaces here hold air, and the
 * evidence knows no other atmosphere (common practice, no source).
 */
export function checkAtmosphere(evidence: Evidence): EvidenceProblem[] {
  const lists = [
    ["sensors", evidence.sensors],
    ["references", evidence.references],
  ] as const;
  return lists.flatMap(([list, items]) =>
    items.flatMap((item, i) =>
      referenceFunctions[item.type].isOxidisingInAir
        ? [
            {
              path: `${list}[${i}].type`,
              message: `Type ${item.type} (${item.id}) oxidises in the furnace's air: it is calibrated in vacuum or inert gas, not here. Take it out of the load.`,
            },
          ]
        : [],
    ),
  );
}
