import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import type { EvidenceProblem } from "./evaluation";
import type { Evidence } from "./schema";

/**
 * Platinum takes up base metal vapour at temperature and drifts. Beside base metal, and beside metal
 * sheaths in a block, it needs its own closed, gas-tight alumina sheath (common practice, no source).
 */
export function checkProtection(evidence: Evidence): EvidenceProblem[] {
  const inLoad = [
    ...evidence.references.map((item, i) => ({ item, path: `references[${i}]`, kind: "reference" })),
    ...evidence.sensors.map((item, i) => ({ item, path: `sensors[${i}]`, kind: "sensor" })),
  ];
  const base = inLoad.find(({ item }) => !referenceFunctions[item.type].isNoble);
  const sheathed =
    evidence.configuration.kind === "equalising-block"
      ? inLoad.find(({ item }) => item.protection === "metal-sheath")
      : undefined;
  return inLoad.flatMap(({ item, path, kind }) => {
    if (!referenceFunctions[item.type].isNoble || item.protection === "alumina-sheath") return [];
    const neighbour = base ?? (sheathed?.item === item ? undefined : sheathed);
    if (!neighbour) return [];
    const beside = base ? `base metal (type ${neighbour.item.type}` : "a metal sheath (";
    return [
      {
        path: `${path}.protection`,
        message: `Type ${item.type} ${kind} ${item.id} stands beside ${beside}${base ? ", " : ""}${neighbour.kind} ${neighbour.item.id}) without its own closed alumina sheath: give it one, or load it apart.`,
      },
    ];
  });
}
