import { recordEquipment } from "@/lib/operations/equipment/record";
import { decideCharacterisation } from "@/lib/operations/furnace/decide-characterisation";
import { recordFurnace } from "@/lib/operations/furnace/record";
import { recordCharacterisation } from "@/lib/operations/furnace/record-characterisation";
import { recordConfiguration } from "@/lib/operations/furnace/record-configuration";
import { acceptOrder } from "@/lib/operations/order/accept";
import { recordOrder } from "@/lib/operations/order/record";
import { receiveSensors } from "@/lib/operations/sensor/receive";
import { tellCalibration } from "./calibrations";
import { accepted } from "./orders";
import type { Cast } from "./people";
import { tellProvider } from "./providers";
import { tellFurnaceIntoService, tellIntoService } from "./service";
import type { Teller } from "./teller";

/**
 * EA-4/02, example S5, set up so that a technician can run it: a type N sensor at 1000 °C against two type R
 * references. Published: the uncertainties below. Not published, and ours: the references' deviations (−8.75 µV and
 * −9.90 µV), every certificate, date, maker and serial number.
 */
const s5 = "EA-4/02 example S5";
const ours = "certificate, issuer and dates are not published; these are ours";
const issuers = {
  references: { name: "Issuer of the references (not published)", route: "nmi", kinds: ["reference"] },
  voltmeter: { name: "Issuer of the voltmeter (not published)", route: "nmi", kinds: ["voltmeter"] },
} as const;

/** What a record must hold before its equipment may serve; the example says nothing of it, these are ours. */
const wholeRecord = (receivedOn: string) =>
  ({
    firmware: "none",
    location: "Bench of the worked example",
    receivedOn,
    calibrationIntervalMonths: 12,
    requirement: { largestExpanded: 5, unit: "microvolt" },
  }) as const;

const tellFurnace = async (teller: Teller, cast: Cast): Promise<void> => {
  const { tell, at, day } = teller;
  const { technician, signatory } = cast;
  const { id: furnaceId, equipmentId } = await tell(recordFurnace, technician, at(300), {
    tag: "FUR-S5",
    name: "Horizontal furnace of the worked example",
    maker: "not published",
    serial: "S5",
    minimumCelsius: 200,
    maximumCelsius: 1200,
    boreMillimetre: 50,
    lengthMillimetre: 1000,
  });
  await tellFurnaceIntoService(teller, cast, equipmentId, 300, {
    maker: "not published",
    model: "Horizontal furnace of the worked example",
    serial: "S5",
    location: "Furnace room",
  });
  const { id: configurationId } = await tell(recordConfiguration, technician, at(300), {
    furnaceId,
    name: "Worked example S5",
    kind: "bare-tube",
    places: 3,
    immersionMillimetre: 400,
  });
  const { id } = await tell(recordCharacterisation, technician, at(180), {
    configurationId,
    performedOn: day(181),
    validUntil: day(-184),
    uniformityHalfWidthCelsius: 1,
    statement: `${s5}: temperature differences within ±1 °C at 1000 °C, half range; the length is not published`,
  });
  await tell(decideCharacterisation, signatory, at(179), { id, decision: "accepted" });
};

const tellReferences = async (teller: Teller, cast: Cast): Promise<void> => {
  const { tell, day, at } = teller;
  const { technician } = cast;
  for (const [tag, deviationMicrovolt] of [
    ["REF-S5-1", -8.75],
    ["REF-S5-2", -9.9],
  ] as const) {
    const { id } = await tell(recordEquipment, technician, at(300), {
      tag,
      maker: "not published",
      model: "Type R",
      serial: tag,
      ...wholeRecord(day(300)),
      particulars: {
        kind: "reference",
        type: "R",
        protection: "alumina-sheath",
        driftHalfWidthCelsius: 0.3,
        inhomogeneityRelativeHalfWidth: 0,
        basis: `${s5}: drift within ±0.3 °C; the example has no line for inhomogeneity`,
      },
    });
    await tellIntoService(teller, cast, id, 299);
    await tellCalibration(teller, cast, 200, {
      equipmentId: id,
      certificate: `${tag}-CERT`,
      itemSerial: tag,
      issuer: issuers.references.name,
      route: "nmi",
      performedOn: day(201),
      dueOn: day(-164),
      findings: {
        kind: "reference",
        points: [{ celsius: 1000, deviationMicrovolt }],
        singlePointReachCelsius: 2,
        expanded: 0.3,
        coverageFactor: 2,
        unit: "celsius",
        note: `${s5}: U = 0.3 °C (k = 2). The deviation is ours: it makes the published emf give the published temperature; ${ours}.`,
      },
    });
  }
};

const tellInstruments = async (teller: Teller, cast: Cast): Promise<void> => {
  const { tell, day, at } = teller;
  const { technician } = cast;
  const { id: voltmeter } = await tell(recordEquipment, technician, at(300), {
    tag: "VM-S5",
    maker: "not published",
    model: "Voltmeter",
    serial: "VM-S5",
    ...wholeRecord(day(300)),
    particulars: {
      kind: "voltmeter",
      driftHalfWidthMicrovolt: 0,
      resolutionMicrovolt: 1,
      basis: `${s5}: resolution ±0.5 µV; the example has no line for drift`,
    },
  });
  await tellIntoService(teller, cast, voltmeter, 299);
  await tellCalibration(teller, cast, 200, {
    equipmentId: voltmeter,
    certificate: "VM-S5-CERT",
    itemSerial: "VM-S5",
    issuer: issuers.voltmeter.name,
    route: "nmi",
    performedOn: day(201),
    dueOn: day(-164),
    findings: {
      kind: "voltmeter",
      corrections: [],
      expandedMicrovolt: 2,
      coverageFactor: 2,
      note: `${s5}: U = 2.0 µV (k = 2); ${ours}`,
    },
  });
  const { id: scanner } = await tell(recordEquipment, technician, at(300), {
    tag: "SC-S5",
    maker: "not published",
    model: "Switch",
    serial: "SC-S5",
    ...wholeRecord(day(300)),
    particulars: { kind: "scanner", parasiticHalfWidthMicrovolt: 2, basis: `${s5}: within ±2 µV` },
  });
  const { id: junction } = await tell(recordEquipment, technician, at(300), {
    tag: "ICE-S5",
    maker: "not published",
    model: "Ice point",
    serial: "ICE-S5",
    ...wholeRecord(day(300)),
    particulars: { kind: "junction", celsius: 0, halfWidthCelsius: 0.1, basis: `${s5}: 0 °C ± 0.1 °C` },
  });
  for (const id of [scanner, junction]) await tellIntoService(teller, cast, id, 299);
};

/** The order and its sensor, taken in and ready for the furnace. Returns the order's number. */
export const tellWorkedExample = async (teller: Teller, cast: Cast): Promise<string> => {
  const { tell, at, day } = teller;
  for (const issuer of Object.values(issuers))
    await tellProvider(teller, cast, 302, { ...issuer, accreditation: "" });
  await tellFurnace(teller, cast);
  await tellReferences(teller, cast);
  await tellInstruments(teller, cast);
  const { number } = await tell(recordOrder, cast.desk, at(6, "09:30"), {
    customerId: cast.customers.brandt,
    purchaseOrder: "S5",
    uncertaintyDigits: 1,
    note: `${s5}, to be followed on this platform.`,
    lines: [
      {
        typeLetter: "N",
        construction: "Type N thermocouple of the worked example",
        protection: "other",
        quantity: "1",
        setpoints: "1000",
        tolerance: "none",
        temperatureUnit: "C",
      },
    ],
  });
  await tell(acceptOrder, cast.desk, at(6, "09:40"), { number, version: 1, ...accepted });
  await tell(receiveSensors, cast.desk, at(5, "11:00"), {
    orderNumber: number,
    position: 1,
    receivedOn: day(5),
    serials: "S5-UNKNOWN",
    condition: "as-described",
    polarity: "ok",
    typeCheck: "ok",
  });
  return number;
};
