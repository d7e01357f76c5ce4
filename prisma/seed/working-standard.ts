import { checkKeys } from "@/lib/domain/calibration/acceptance-check";
import { adoptCertificate } from "@/lib/operations/calibration/adopt-certificate";
import { decideCalibration } from "@/lib/operations/calibration/decide";
import { recordCustomer } from "@/lib/operations/customer/record";
import { recordEquipment } from "@/lib/operations/equipment/record";
import { acceptOrder } from "@/lib/operations/order/accept";
import { recordOrder } from "@/lib/operations/order/record";
import { createRun } from "@/lib/operations/run/create";
import { recordTipCheck } from "@/lib/operations/run/record-tip-check";
import { submitRun } from "@/lib/operations/run/submit";
import { receiveSensors } from "@/lib/operations/sensor/receive";
import { program, references, sensors, zeroChannel } from "@/lib/station/simulation/scenario";
import { tellGate } from "./gate";
import { accepted } from "./orders";
import type { Cast } from "./people";
import { demoProcedure } from "./procedures";
import { tellReadings } from "./readings";
import { tellIntoService } from "./service";
import { signOffAll, versionOf } from "./sign-off";
import type { Bench } from "./standards";
import type { Teller } from "./teller";

/**
 * A working standard of the laboratory's own, calibrated in its own furnace beside the references: an order like any
 * other, a run, a certificate, which then becomes its calibration. INVENTED, as all of the demonstration.
 */
const serial = "HV-WS-03";
/** Another furnace of the generator than that of the customers' run. */
const seed = 21;
const days = 120;

const simulated = sensors.find(({ type }) => type === "S");

/** The laboratory orders from itself, so that the sensor goes the way of every other. */
const tellOwnOrder = async ({ tell, at, day }: Teller, { desk }: Cast): Promise<string> => {
  const { id: customerId } = await tell(recordCustomer, desk, at(days + 8), {
    name: "Harrow Vale Calibration",
    addressLines: "4 Kiln Lane\nHarrow Vale HV3 9TQ",
    contactName: "Idris Vaughan",
    email: "idris@harrowvale.example",
  });
  const { number } = await tell(recordOrder, desk, at(days + 6), {
    customerId,
    purchaseOrder: "own standard",
    lines: [
      {
        typeLetter: "S",
        construction: "0.5 mm wire in twin-bore alumina, closed alumina sheath",
        protection: "alumina-sheath",
        quantity: "1",
        setpoints: program.setpointsCelsius.join(" "),
        tolerance: "none",
        temperatureUnit: "C",
      },
    ],
  });
  await tell(acceptOrder, desk, at(days + 5), { number, version: 1, ...accepted });
  const { tags } = await tell(receiveSensors, desk, at(days + 2), {
    orderNumber: number,
    position: 1,
    receivedOn: day(days + 2),
    serials: serial,
    condition: "as-described",
    polarity: "ok",
    typeCheck: "ok",
    loopResistanceOhm: "1.9",
    insulationMegaohm: "",
  });
  return tags[0] ?? "";
};

const placesOf = ({ junctionId }: Bench, tag: string) => [
  ...references.map(({ place, channel, id }) => ({
    place,
    item: { kind: "reference" as const, tag: id },
    channel,
    junctionId,
    immersionMillimetre: 400,
  })),
  {
    place: simulated?.place ?? "3",
    item: { kind: "sensor" as const, tag },
    channel: simulated?.channel ?? "104",
    junctionId,
    immersionMillimetre: 400,
  },
  { ...zeroChannel, item: { kind: "shorted" as const }, junctionId },
];

const tellOwnRun = async (teller: Teller, cast: Cast, bench: Bench, tag: string): Promise<string> => {
  const { tell, at } = teller;
  const { technician } = cast;
  const places = placesOf(bench, tag);
  const { number: run } = await tell(createRun, technician, at(days, "06:10"), {
    configurationId: bench.configurationId,
    voltmeterId: bench.voltmeterId,
    scannerId: bench.scannerId,
    procedure: demoProcedure,
    setpointsCelsius: [...program.setpointsCelsius],
    places,
    note: "A working standard of our own. Simulated readings.",
  });
  for (const { place, item } of places)
    if (item.kind !== "shorted")
      await tell(recordTipCheck, technician, at(days, "06:20"), {
        run,
        place,
        riseMicrovolt: 41,
        onlyThisChannel: true,
      });
  await tellGate(teller, cast, run, places, days);
  await tellReadings(teller, cast, {
    run,
    seed,
    days,
    fileName: "working-standard.csv",
    // The generator's other sensors stayed out of this furnace.
    channels: new Set(places.map(({ channel }) => channel)),
  });
  await tell(submitRun, technician, at(days, "13:40"), { run, version: await versionOf(run) });
  return run;
};

export const tellWorkingStandard = async (teller: Teller, cast: Cast, bench: Bench): Promise<void> => {
  const { tell, at, day } = teller;
  const run = await tellOwnRun(teller, cast, bench, await tellOwnOrder(teller, cast));
  const [certificate = ""] = await signOffAll(teller, cast, run, days - 1);
  const { id } = await tell(recordEquipment, cast.technician, at(days - 2), {
    tag: "WS-S-03",
    maker: "Perrin Noble Wire (invented)",
    model: "0.5 mm, twin-bore alumina",
    serial,
    location: "Cabinet of references, tube 3",
    receivedOn: day(days + 20),
    calibrationIntervalMonths: 12,
    requirement: { fromCelsius: 300, toCelsius: 1100, largestExpanded: 25, unit: "microvolt" },
    particulars: {
      kind: "reference",
      type: "S",
      protection: "alumina-sheath",
      driftHalfWidthCelsius: 0.3,
      inhomogeneityRelativeHalfWidth: 0.0002,
      basis: "no history yet; 0.02 % of the emf is common practice, no source (invented)",
    },
  });
  await tellIntoService(teller, cast, id, days - 3);
  const adopted = await tell(adoptCertificate, cast.manager, at(days - 4), {
    equipmentId: id,
    certificate,
    dueOn: day(days - 365),
  });
  await tell(decideCalibration, cast.signatory, at(days - 5), {
    id: adopted.id,
    decision: "accepted",
    confirmed: [...checkKeys],
  });
};
