import { recordEquipment } from "@/lib/operations/equipment/record";
import { recordEntry } from "@/lib/operations/equipment/record-entry";
import { setEquipmentState } from "@/lib/operations/equipment/set-state";
import { tellCalibration } from "./calibrations";
import type { Cast } from "./people";
import { tellIntoService } from "./service";
import type { Teller } from "./teller";

const invented = "invented for the demonstration";

/** What tells the room, calibrated in house; and a lot of compensating cable, tested at its ends. */
const tellRoomAndLead = async (teller: Teller, cast: Cast): Promise<void> => {
  const { tell, at, day } = teller;
  const { technician } = cast;
  const { id: ambient } = await tell(recordEquipment, technician, at(370), {
    tag: "TH-01",
    maker: "Selby Instruments (invented)",
    model: "Room thermometer and hygrometer",
    serial: "TH-2207",
    firmware: "1.2",
    location: "Bench 1",
    receivedOn: day(370),
    calibrationIntervalMonths: 24,
    requirement: { largestExpanded: 0.5, unit: "celsius" },
    particulars: {
      kind: "ambient",
      driftHalfWidthCelsius: 0.2,
      driftHalfWidthPercent: 2,
      basis: `its data sheet (${invented})`,
    },
  });
  await tellIntoService(teller, cast, ambient, 369);
  await tellCalibration(teller, cast, 200, {
    equipmentId: ambient,
    certificate: "HV-INT-017",
    itemSerial: "TH-2207",
    issuer: "Harrow Vale Calibration (invented)",
    route: "in-house",
    performedOn: day(201),
    dueOn: day(-529),
    findings: {
      kind: "ambient",
      correctionCelsius: -0.1,
      expandedCelsius: 0.3,
      humidity: { correctionPercent: 1.5, expandedPercent: 3 },
      coverageFactor: 2,
      note: invented,
    },
  });
  const { id: lead } = await tell(recordEquipment, technician, at(120), {
    tag: "LEAD-K-07",
    maker: "Carrick Cable (invented)",
    model: "Compensating cable, 2 × 0.22 mm²",
    serial: "reel 7",
    location: "Cabinet of leads",
    receivedOn: day(120),
    particulars: {
      kind: "lead",
      form: "compensating",
      type: "K",
      class: "2",
      lot: "2231-7",
      correctionMicrovolt: -3.2,
      halfWidthMicrovolt: 4,
      fromCelsius: 15,
      toCelsius: 40,
      basis: `three pieces of the lot, each end at 15, 25 and 40 °C (${invented})`,
    },
  });
  await tellIntoService(teller, cast, lead, 119);
};

/** A reference that broke and was retired, and a voltmeter that has come and is not verified yet. */
const tellComingAndGoing = async (teller: Teller, cast: Cast): Promise<void> => {
  const { tell, at, day } = teller;
  const { technician } = cast;
  const { id: broken } = await tell(recordEquipment, technician, at(390), {
    tag: "REF-S-11",
    maker: "Perrin Noble Wire (invented)",
    model: "0.5 mm, twin-bore alumina",
    serial: "PN-0988",
    location: "Cabinet of references, tube 3",
    receivedOn: day(390),
    calibrationIntervalMonths: 12,
    requirement: { fromCelsius: 300, toCelsius: 1100, largestExpanded: 0.8, unit: "celsius" },
    particulars: {
      kind: "reference",
      type: "S",
      protection: "alumina-sheath",
      driftHalfWidthCelsius: 0.25,
      inhomogeneityRelativeHalfWidth: 0.0002,
      basis: `common practice, no source (${invented})`,
    },
  });
  await tellIntoService(teller, cast, broken, 389);
  await tell(recordEntry, technician, at(310), {
    id: broken,
    happenedOn: day(310),
    summary: "The junction broke when the bundle was drawn from the tube (invented).",
    figures: { kind: "damage", soundOn: day(311) },
  });
  await tell(setEquipmentState, technician, at(309), {
    id: broken,
    version: 4,
    state: "retired",
    reason: "Too short to be welded again (invented).",
  });
  await tell(recordEquipment, technician, at(3), {
    tag: "VM-02",
    maker: "Selby Instruments (invented)",
    model: "Seven-digit voltmeter",
    serial: "71902",
    firmware: "3.20",
    receivedOn: day(3),
    calibrationIntervalMonths: 12,
    requirement: { largestExpanded: 5, unit: "microvolt" },
    particulars: {
      kind: "voltmeter",
      driftHalfWidthMicrovolt: 1,
      resolutionMicrovolt: 0.1,
      basis: `its data sheet (${invented})`,
    },
  });
};

/** Equipment beside the chain of the story: the room, a lead, what came and what went. All invented. */
export const tellAuxiliaries = async (teller: Teller, cast: Cast): Promise<void> => {
  await tellRoomAndLead(teller, cast);
  await tellComingAndGoing(teller, cast);
};
