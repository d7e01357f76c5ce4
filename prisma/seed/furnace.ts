import { isoDay } from "@/lib/domain/calibration/due";
import { surveyKinds } from "@/lib/domain/furnace/survey-kinds";
import { decideCharacterisation } from "@/lib/operations/furnace/decide-characterisation";
import { decideInhomogeneity } from "@/lib/operations/furnace/decide-inhomogeneity";
import { planCharacterisation } from "@/lib/operations/furnace/plan-characterisation";
import { recordFurnace } from "@/lib/operations/furnace/record";
import { recordConfiguration } from "@/lib/operations/furnace/record-configuration";
import { recordInhomogeneity } from "@/lib/operations/furnace/record-inhomogeneity";
import { recordSurvey } from "@/lib/operations/furnace/record-survey";
import { submitCharacterisation } from "@/lib/operations/furnace/submit-characterisation";
import { type SurveyedFurnace, simulateSurvey } from "@/lib/station/simulation/simulate-survey";
import type { Cast } from "./people";
import { tellFurnaceIntoService } from "./service";
import type { Teller } from "./teller";

/**
 * The demonstration's furnace as it truly is at a temperature: AN INVENTED SCENARIO. A little less uniform the hotter it is;
 * the references stand in the middle of the bundle, so the other positions are told against it.
 */
const furnaceAt = (celsius: number): SurveyedFurnace => ({
  celsius,
  bestMillimetre: 400,
  fallCelsius: 0.3 + celsius * 0.0001,
  places: { centre: 0, top: 0.45, left: -0.2, bottom: -0.44, right: 0.16 },
  driftCelsius: 0.15,
  noiseMicrovolt: 0.15,
});

/** The block evens out what differs between its bores: against the middle one, by their numbers. */
const blockAt300: SurveyedFurnace = {
  ...furnaceAt(300),
  fallCelsius: 0.2,
  places: { "1": 0, "2": 0.09, "3": 0.05, "4": -0.06, "5": -0.11, "6": -0.04, "7": 0.07 },
};

const temperatures = [300, 700, 1100];

const plan = {
  temperatures,
  fromMillimetre: 370,
  toMillimetre: 430,
  windowMinutes: 15,
  probe: "REF-S-02",
  probeType: "S",
  monitor: "REF-S-01",
  monitorType: "S",
  probeInhomogeneityPercent: 0.02,
  meterMicrovolt: 0.2,
} as const;

/** One measured from plan to acceptance, a day for each temperature: `days` before today. */
const tellCharacterisation = async (
  { tell, at, day }: Teller,
  { technician, signatory }: Cast,
  configurationId: string,
  days: number,
  seed: number,
): Promise<void> => {
  const { id: characterisationRunId } = await tell(planCharacterisation, technician, at(days), {
    configurationId,
    plan,
  });
  for (const [index, celsius] of temperatures.entries())
    for (const [order, kind] of surveyKinds.entries())
      await tell(recordSurvey, technician, at(days - index - 1, "15:00"), {
        characterisationRunId,
        celsius,
        measuredOn: isoDay(at(days - index - 1)),
        readings: simulateSurvey(kind, furnaceAt(celsius), seed + 10 * index + order),
        file: null,
      });
  const { id } = await tell(submitCharacterisation, technician, at(days - 4), {
    characterisationRunId,
    validUntil: day(days - 3 - 365),
  });
  await tell(decideCharacterisation, signatory, at(days - 5), { id, decision: "accepted" });
};

/** A reference moved through the surface of a salt bath: what its wires add, in place of what is assumed of its type. Invented. */
export const tellInhomogeneity = async (
  { tell, at, day }: Teller,
  { technician, signatory }: Cast,
): Promise<void> => {
  const { id } = await tell(recordInhomogeneity, technician, at(190, "15:00"), {
    tag: "REF-S-02",
    performedOn: day(190),
    readings: {
      method: "scan",
      celsius: 250,
      outsideCelsius: 23,
      meterMicrovolt: 0.1,
      medium: "Salt bath, withdrawn through its surface",
      rows: [1873.9, 1874.1, 1874.4, 1874.5, 1874.3, 1874.1, 1873.9].map((microvolt, index) => ({
        millimetre: 120 + 30 * index,
        microvolt,
        monitorCelsius: 250,
      })),
    },
  });
  await tell(decideInhomogeneity, signatory, at(189), { id, decision: "accepted" });
};

/** The furnace and its bare-tube configuration, characterised a year and more ago and again since: measured, simulated readings. */
export const tellFurnace = async (teller: Teller, cast: Cast): Promise<string> => {
  const { tell, at } = teller;
  const { technician } = cast;
  const { id: furnaceId, equipmentId } = await tell(recordFurnace, technician, at(390), {
    tag: "FUR-01",
    name: "Long tube furnace, three zones",
    maker: "Ashdown Furnaces (invented)",
    serial: "AF-1177",
    minimumCelsius: 200,
    maximumCelsius: 1200,
    boreMillimetre: 60,
    lengthMillimetre: 1000,
    zones: 3,
    bestImmersionMillimetre: 400,
    workingLengthMillimetre: 60,
    controllerSetpoints: [
      { celsius: 300, controllerCelsius: 297 },
      { celsius: 700, controllerCelsius: 698 },
      { celsius: 1100, controllerCelsius: 1101 },
    ],
    rampUpCelsiusPerHour: 600,
    rampDownCelsiusPerHour: 300,
  });
  await tellFurnaceIntoService(teller, cast, equipmentId, 390, {
    maker: "Ashdown Furnaces (invented)",
    model: "Long tube furnace, three zones",
    serial: "AF-1177",
    location: "Furnace room",
  });
  const { id: configurationId } = await tell(recordConfiguration, technician, at(389), {
    furnaceId,
    name: "Bare tube, bundle round the references",
    kind: "bare-tube",
    places: 12,
    immersionMillimetre: 400,
    bundleDiameterMillimetre: 30,
  });
  await tellCharacterisation(teller, cast, configurationId, 388, 300);
  await tellCharacterisation(teller, cast, configurationId, 186, 200);
  // An equalising block, bought for metal-sheathed sensors and still being characterised: no run can be made in it.
  const { id: blockId } = await tell(recordConfiguration, technician, at(40), {
    furnaceId,
    name: "Alumina block, 7 bores",
    kind: "equalising-block",
    places: 7,
    immersionMillimetre: 400,
    bores: [
      { number: "1", diameterMillimetre: 9, xMillimetre: 0, yMillimetre: 0 },
      ...[
        [18, 0],
        [9, 15.6],
        [-9, 15.6],
        [-18, 0],
        [-9, -15.6],
        [9, -15.6],
      ].map(([xMillimetre = 0, yMillimetre = 0], index) => ({
        number: String(index + 2),
        diameterMillimetre: 7,
        xMillimetre,
        yMillimetre,
      })),
    ],
  });
  const { id: characterisationRunId } = await tell(planCharacterisation, technician, at(12), {
    configurationId: blockId,
    plan,
  });
  for (const kind of ["axial", "positions"] as const)
    await tell(recordSurvey, technician, at(11, "15:00"), {
      characterisationRunId,
      celsius: 300,
      measuredOn: isoDay(at(11)),
      readings: simulateSurvey(kind, blockAt300, 400),
      file: null,
    });
  return configurationId;
};
