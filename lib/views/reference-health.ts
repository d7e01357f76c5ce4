import { loadCalibrationsOf } from "@/lib/data/calibration/calibration-store";
import { loadEquipment } from "@/lib/data/equipment/equipment-store";
import { loadUses } from "@/lib/data/equipment/load-uses";
import { loadLogbook } from "@/lib/data/equipment/logbook-store";
import { calibrationInForce } from "@/lib/domain/calibration/in-force";
import { isCalibrationOf } from "@/lib/domain/calibration/read-calibration";
import { driftAdvice, driftHistory } from "@/lib/domain/equipment/drift-history";
import { isEquipmentOf } from "@/lib/domain/equipment/read-equipment";
import { hoursBefore, referenceHealth } from "@/lib/domain/equipment/reference-health";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "./view";

/** What a reference has been through, and how it has changed: dates, hours, anneals, drift from calibration to calibration. */
export const referenceHealthView = (actor: Actor, id: string, today: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const loaded = await loadEquipment(tx, id);
    const equipment = found(loaded && isEquipmentOf(loaded, "reference") ? loaded : null);
    const uses = await loadUses(tx, equipment.id);
    const entries = await loadLogbook(tx, equipment.id);
    const accepted = (await loadCalibrationsOf(tx, equipment.id))
      .filter(({ acceptance }) => acceptance === "accepted")
      .toReversed();
    const references = accepted.flatMap((one) => (isCalibrationOf(one, "reference") ? [one] : []));
    const calibrated = references.map(({ certificate, performedOn, findings }) => ({
      certificate,
      performedOn,
      findings,
      hours: hoursBefore(uses, performedOn),
    }));
    const { type, driftHalfWidthCelsius } = equipment.particulars;
    const drift = driftHistory(type, calibrated);
    const hottest = drift.toSorted((one, other) => other.celsius - one.celsius)[0];
    return {
      equipment,
      uses: uses.toReversed(),
      health: referenceHealth(uses, entries, calibrationInForce(accepted, today)?.performedOn ?? null),
      drift,
      allowedCelsius: driftHalfWidthCelsius,
      advice: hottest
        ? driftAdvice(
            hottest,
            calibrated.map(({ findings }) => findings.coverageFactor),
            driftHalfWidthCelsius,
          )
        : null,
    };
  });
