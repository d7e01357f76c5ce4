import type pg from "pg";
import { makeSlot } from "./orders-and-customers";
import type { Insert } from "./standards-and-chains";

const now = "2026-03-02T09:00:00Z";

/** Furnace and instruments of both runs, with what they rest on. */
export const makeBench = async (
  admin: pg.Client,
  insert: Insert,
  technicianId: string,
  secondPersonId: string,
) => {
  const equipment = async (tag: string, kind: string) => {
    const id = await insert(admin, "equipment", {
      tag,
      kind,
      maker: "M",
      model: "X",
      serial: tag,
      particulars: "{}",
    });
    await insert(admin, "equipment_entry", {
      equipment_id: id,
      kind: "verification",
      happened_on: "2026-01-01",
      outcome: "passed",
      summary: "on receipt",
      recorded_at: now,
    });
    for (const state of ["verified", "in-service"])
      await admin.query("UPDATE equipment SET state = $1 WHERE id = $2", [state, id]);
    return id;
  };
  const day = { performed_on: "2026-01-01", due_on: "2027-01-01" };
  const calibrated = async (tag: string, kind: string) => {
    const equipmentId = await equipment(tag, kind);
    const calibrationId = await insert(admin, "calibration", {
      equipment_id: equipmentId,
      certificate: `C-${tag}`,
      issuer: "P",
      route: "nmi",
      ...day,
      findings: "{}",
      recorded_by_id: technicianId,
      recorded_at: now,
    });
    const decided = { decision: "accepted", decided_by_id: secondPersonId, decided_at: now };
    await insert(admin, "calibration_decision", { calibration_id: calibrationId, checks: "[]", ...decided });
    return { equipmentId, calibrationId };
  };
  const approved = { state: "approved", approved_from: "2026-01-01", approved_until: "2027-01-01" };
  const scope = '[{"kind":"reference"},{"kind":"voltmeter"}]';
  await insert(admin, "provider", { name: "P", route: "nmi", scope, ...approved });
  const { equipmentId: referenceId, calibrationId } = await calibrated("R-1", "reference");
  const furnace = {
    tag: "F-1",
    name: "F",
    maker: "M",
    serial: "1",
    minimum_celsius: 100,
    maximum_celsius: 1200,
  };
  const furnaceId = await insert(admin, "furnace", {
    ...furnace,
    equipment_id: await equipment("F-1", "furnace"),
    bore_millimetre: 50,
    length_millimetre: 900,
  });
  const tube = {
    furnace_id: furnaceId,
    name: "bare",
    kind: "bare-tube",
    places: 10,
    immersion_millimetre: 400,
  };
  const configurationId = await insert(admin, "furnace_configuration", tube);
  const characterisationId = await insert(admin, "characterisation", {
    configuration_id: configurationId,
    performed_on: "2026-01-01",
    valid_until: "2027-01-01",
    uniformity_half_width_celsius: 1,
    statement: "half-width over 60 mm",
    recorded_at: now,
    recorded_by_id: technicianId,
  });
  await insert(admin, "characterisation_decision", {
    characterisation_id: characterisationId,
    decision: "accepted",
    decided_by_id: secondPersonId,
    decided_at: now,
  });
  const bench = { referenceId, junctionId: await equipment("J-1", "junction"), configurationId };
  await makeSlot(admin, insert, furnaceId, technicianId);
  return {
    ...bench,
    calibrationId,
    characterisationId,
    voltmeterId: (await calibrated("V-1", "voltmeter")).equipmentId,
    scannerId: await equipment("S-1", "scanner"),
  };
};
