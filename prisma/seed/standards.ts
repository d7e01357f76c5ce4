import { changeEquipment } from "@/lib/operations/equipment/change";
import { recordEquipment } from "@/lib/operations/equipment/record";
import { figures, references } from "@/lib/station/simulation/scenario";
import { behindIceBath, behindScanner, behindVoltmeter } from "./behind";
import { tellCalibration } from "./calibrations";
import { tellChecks } from "./checks";
import { tellFurnace, tellInhomogeneity } from "./furnace";
import type { Cast } from "./people";
import { electrical, metrology, tellProvider } from "./providers";
import { tellIntoService } from "./service";
import type { Teller } from "./teller";
import { tellThermometer } from "./thermometer";
import { tellTypeRReference } from "./type-r-reference";

const invented = "invented for the demonstration";
const house = "Harrow Vale Calibration (invented)";

export type Bench = {
  readonly configurationId: string;
  readonly voltmeterId: string;
  readonly scannerId: string;
  readonly junctionId: string;
};

/** It came with a certificate a year older: what it has drifted since is seen between the two. */
const tellEarlier = (
  teller: Teller,
  cast: Cast,
  equipmentId: string,
  reference: (typeof references)[number],
) =>
  tellCalibration(teller, cast, 378, {
    equipmentId,
    certificate: `${reference.certificate}-0`,
    itemSerial: reference.serial,
    issuer: metrology.name,
    route: "accredited",
    performedOn: teller.day(390),
    dueOn: teller.day(25),
    findings: {
      kind: "reference",
      points: reference.deviations.map(([celsius, deviationMicrovolt]) => ({
        celsius,
        deviationMicrovolt: Number((deviationMicrovolt + 0.0011 * celsius).toFixed(2)),
      })),
      expanded: figures.referenceExpandedCelsius,
      coverageFactor: 2,
      unit: "celsius",
      note: invented,
    },
  });

const tellReferences = async (teller: Teller, cast: Cast): Promise<void> => {
  const { tell, at, day } = teller;
  const { technician } = cast;
  const ids: string[] = [];
  for (const reference of references) {
    const described = {
      maker: "Perrin Noble Wire (invented)",
      model: "0.5 mm, twin-bore alumina",
      serial: reference.serial,
      location: "Cabinet of references, tube 1",
      receivedOn: day(380),
      calibrationIntervalMonths: 12,
      checkIntervalDays: 120,
      requirement: { fromCelsius: 300, toCelsius: 1100, largestExpanded: 0.8, unit: "celsius" as const },
    };
    const particulars = {
      kind: "reference" as const,
      type: "S" as const,
      protection: "alumina-sheath" as const,
      inhomogeneityRelativeHalfWidth: figures.referenceInhomogeneity,
    };
    const { id } = await tell(recordEquipment, technician, at(380), {
      tag: reference.id,
      ...described,
      particulars: {
        ...particulars,
        driftHalfWidthCelsius: 2 * figures.referenceDriftCelsius,
        basis: `no history yet: twice the usual; 0.02 % of the emf is common practice, no source (${invented})`,
      },
    });
    ids.push(id);
    await tellIntoService(teller, cast, id, 379);
    await tellEarlier(teller, cast, id, reference);
    await tellCalibration(teller, cast, 280, {
      equipmentId: id,
      certificate: reference.certificate,
      itemSerial: reference.serial,
      issuer: metrology.name,
      route: "accredited",
      performedOn: day(281),
      dueOn: day(-84),
      findings: {
        kind: "reference",
        points: reference.deviations.map(([celsius, deviationMicrovolt]) => ({
          celsius,
          deviationMicrovolt,
        })),
        expanded: figures.referenceExpandedCelsius,
        coverageFactor: 2,
        unit: "celsius",
        note: invented,
      },
    });
    // The two certificates lie close together: the drift between them is what the record says from now on.
    await tell(changeEquipment, technician, at(279, "14:00"), {
      id,
      version: 3,
      ...described,
      particulars: {
        ...particulars,
        driftHalfWidthCelsius: figures.referenceDriftCelsius,
        basis: `history of the reference; 0.02 % of the emf is common practice, no source (${invented})`,
      },
    });
  }
  const [annealed = "", compared = ""] = ids;
  await tellChecks(teller, cast, { annealed, compared });
};

const tellInstruments = async (teller: Teller, cast: Cast): Promise<Omit<Bench, "configurationId">> => {
  const { tell, at, day } = teller;
  const { technician } = cast;
  const { id: voltmeterId } = await tell(recordEquipment, technician, at(380), {
    tag: "VM-01",
    maker: "Selby Instruments (invented)",
    model: "Seven-digit voltmeter",
    serial: "70418",
    firmware: "3.18",
    location: "Bench 1, rack",
    receivedOn: day(380),
    calibrationIntervalMonths: 12,
    maintenanceIntervalDays: 730,
    requirement: { largestExpanded: 5, unit: "microvolt" },
    particulars: {
      kind: "voltmeter",
      driftHalfWidthMicrovolt: figures.voltmeterDriftMicrovolt,
      resolutionMicrovolt: figures.voltmeterStepMicrovolt,
      basis: `drift between its calibrations (${invented})`,
    },
  });
  await tellIntoService(teller, cast, voltmeterId, 379);
  await tellCalibration(teller, cast, 230, {
    equipmentId: voltmeterId,
    certificate: "CE-2207",
    itemSerial: "70418",
    issuer: electrical.name,
    route: "accredited",
    performedOn: day(232),
    dueOn: day(-133),
    parents: behindVoltmeter,
    findings: {
      kind: "voltmeter",
      corrections: [],
      expandedMicrovolt: figures.voltmeterExpandedMicrovolt,
      coverageFactor: 2,
      note: invented,
    },
  });
  const { id: scannerId } = await tell(recordEquipment, technician, at(380), {
    tag: "SC-01",
    maker: "Selby Instruments (invented)",
    model: "Forty-channel scanner",
    serial: "S-3390",
    firmware: "1.07",
    location: "Bench 1, rack",
    receivedOn: day(380),
    requirement: {},
    particulars: {
      kind: "scanner",
      parasiticHalfWidthMicrovolt: figures.scannerParasiticMicrovolt,
      basis: `every channel shorted in turn (${invented})`,
    },
  });
  await tellIntoService(teller, cast, scannerId, 379);
  await tellCalibration(teller, cast, 160, {
    equipmentId: scannerId,
    certificate: "HV-INT-018",
    itemSerial: "S-3390",
    issuer: house,
    route: "in-house",
    performedOn: day(161),
    dueOn: day(-22),
    parents: behindScanner(teller),
    findings: {
      kind: "scanner",
      parasiticHalfWidthMicrovolt: figures.scannerParasiticMicrovolt,
      note: invented,
    },
  });
  const { id: junctionId } = await tell(recordEquipment, technician, at(380), {
    tag: "ICE-01",
    maker: "Harrow Vale Calibration (invented)",
    model: "Ice bath, twelve wells",
    serial: "IP-7",
    location: "Bench 1",
    receivedOn: day(380),
    requirement: { largestExpanded: 0.1, unit: "celsius" },
    particulars: {
      kind: "junction",
      celsius: 0,
      halfWidthCelsius: figures.junctionCelsius,
      basis: `checked by thermometer before each run (${invented})`,
    },
  });
  await tellIntoService(teller, cast, junctionId, 379);
  await tellCalibration(teller, cast, 150, {
    equipmentId: junctionId,
    certificate: "HV-INT-021",
    itemSerial: "IP-7",
    issuer: house,
    route: "in-house",
    performedOn: day(152),
    dueOn: day(-40),
    parents: behindIceBath(teller),
    findings: { kind: "junction", celsius: 0, expandedCelsius: 0.04, coverageFactor: 2, note: invented },
  });
  return { voltmeterId, scannerId, junctionId };
};

/** What every number of the story stands on. Makers, issuers and certificates are invented. */
export const tellStandards = async (teller: Teller, cast: Cast): Promise<Bench> => {
  for (const provider of [metrology, electrical]) await tellProvider(teller, cast, 395, provider);
  const configurationId = await tellFurnace(teller, cast);
  await tellReferences(teller, cast);
  await tellTypeRReference(teller, cast);
  await tellInhomogeneity(teller, cast);
  await tellThermometer(teller, cast);
  return { configurationId, ...(await tellInstruments(teller, cast)) };
};
