import { isoDay } from "@/lib/domain/calibration/due";
import { junctionEvidenceOf } from "@/lib/domain/equipment/junction-evidence";
import { referenceEvidenceOf } from "@/lib/domain/equipment/reference-evidence";
import { scannerEvidenceOf } from "@/lib/domain/equipment/scanner-evidence";
import type { CalibratedKind } from "@/lib/domain/equipment/types";
import { voltmeterEvidenceOf } from "@/lib/domain/equipment/voltmeter-evidence";
import { characterisedRange } from "@/lib/domain/furnace/characterisation-figures";
import { configurationEvidenceOf } from "@/lib/domain/furnace/configuration-evidence";
import type { Bench } from "@/lib/domain/order/ideal-run";
import type { BudgetInputs } from "@/lib/domain/run/budget-inputs";
import { problemOfUse } from "@/lib/domain/run/equipment-problem";
import { loadMeasuredInhomogeneity } from "../furnace/inhomogeneity-store";
import type { Tx } from "../in-scope";
import { equipmentCandidate } from "./equipment-candidate";
import { loadConfigurationOn } from "./load-configuration";
import { loadStandards, type Standard } from "./load-standards";

/**
 * What a run could be measured with on a day: each characterised configuration with the references in service and the
 * first voltmeter, scanner and junction by tag. Empty where one of those is missing.
 */
export const loadBenches = async (tx: Tx, budget: BudgetInputs, now: Date): Promise<readonly Bench[]> => {
  const day = isoDay(now);
  const rows = await tx.equipment.findMany({
    where: { state: "in-service" },
    select: { id: true },
    orderBy: { tag: "asc" },
  });
  const standards = await loadStandards(tx, { ids: rows.map(({ id }) => id) }, { day, moment: now });
  // What a run could not be made with today is no bench either.
  const of = <K extends CalibratedKind>(kind: K) =>
    rows.flatMap(({ id }) => {
      const standard = standards.byId(kind, id);
      const candidate = equipmentCandidate(standard as Standard<CalibratedKind> | null);
      return standard && problemOfUse(candidate, kind, day) === null ? [standard] : [];
    });
  const [voltmeter] = of("voltmeter").flatMap(({ equipment, calibration }) =>
    calibration ? [voltmeterEvidenceOf(equipment, calibration)] : [],
  );
  const [scanner] = of("scanner").map(({ equipment, calibration }) =>
    scannerEvidenceOf(equipment, calibration),
  );
  const [junction] = of("junction").map(({ equipment, calibration }) =>
    junctionEvidenceOf(equipment, calibration),
  );
  if (!voltmeter || !scanner || !junction) return [];
  const standing = of("reference");
  const measured = await loadMeasuredInhomogeneity(
    tx,
    standing.map(({ equipment }) => equipment.id),
    { day, moment: now },
  );
  const references = standing.flatMap(({ equipment, calibration }) =>
    calibration ? [referenceEvidenceOf(equipment, calibration, measured.get(equipment.id))] : [],
  );
  const ids = await tx.furnaceConfiguration.findMany({ select: { id: true }, orderBy: { name: "asc" } });
  const benches: Bench[] = [];
  for (const { id } of ids) {
    const configuration = await loadConfigurationOn(tx, id, day, now);
    if (!configuration?.characterisation) continue;
    const { furnace, characterisation } = configuration;
    const characterised = characterisation.figures && characterisedRange(characterisation.figures);
    benches.push({
      budget,
      configuration: configurationEvidenceOf(furnace, configuration, characterisation),
      references,
      voltmeter,
      scanner,
      junction,
      minimumCelsius: Math.max(furnace.minimumCelsius, characterised?.fromCelsius ?? furnace.minimumCelsius),
      maximumCelsius: Math.min(furnace.maximumCelsius, characterised?.toCelsius ?? furnace.maximumCelsius),
    });
  }
  return benches;
};
