import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import type { Equipment } from "../equipment/types";
import { certifiedTemperatures } from "./certified-temperatures";
import type { Findings } from "./findings";

type Unit = "celsius" | "microvolt";

const stated = (findings: Findings): { readonly value: number; readonly unit: Unit } | null => {
  switch (findings.kind) {
    case "reference":
      return { value: findings.expanded, unit: findings.unit };
    case "voltmeter":
    case "lead":
      return { value: findings.expandedMicrovolt, unit: "microvolt" };
    case "thermometer":
    case "ambient":
    case "junction":
      return { value: findings.expandedCelsius, unit: "celsius" };
    case "scanner":
      return null;
  }
};

/** dE/dt at the certificate's temperatures, µV/°C. */
const slopes = (findings: Findings, equipment: Pick<Equipment, "particulars">): readonly number[] => {
  const { particulars } = equipment;
  if (findings.kind !== "reference" || particulars.kind !== "reference") return [];
  return certifiedTemperatures(findings).flatMap((celsius) => {
    const slope = seebeck(referenceFunctions[particulars.type], celsius);
    return slope.ok && slope.value > 0 ? [slope.value] : [];
  });
};

/** The largest U of a certificate in the unit asked for; null where it has none or it cannot be turned into that unit. */
export const expandedOf = (
  findings: Findings,
  equipment: Pick<Equipment, "particulars">,
  unit: Unit,
): number | null => {
  const found = stated(findings);
  if (!found || found.unit === unit) return found?.value ?? null;
  const all = slopes(findings, equipment);
  if (all.length === 0) return null;
  return unit === "celsius" ? found.value / Math.min(...all) : found.value * Math.max(...all);
};
