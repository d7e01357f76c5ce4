import { recordEquipment } from "@/lib/operations/equipment/record";
import { tellCalibration } from "./calibrations";
import type { Cast } from "./people";
import { metrology } from "./providers";
import { tellIntoService } from "./service";
import type { Teller } from "./teller";

const invented = "invented for the demonstration";

/** The platinum thermometer that stands in the ice bath before each run: the curve of IEC 60751:2022, the rest invented. */
export const tellThermometer = async (teller: Teller, cast: Cast): Promise<void> => {
  const { tell, at, day } = teller;
  const { id } = await tell(recordEquipment, cast.technician, at(380), {
    tag: "PRT-01",
    maker: "Perrin Noble Wire (invented)",
    model: "100 Ω, four wires, 3 mm",
    serial: "P-2214",
    location: "Bench 1",
    receivedOn: day(380),
    calibrationIntervalMonths: 12,
    requirement: { fromCelsius: -5, toCelsius: 30, largestExpanded: 0.02, unit: "celsius" },
    particulars: {
      kind: "thermometer",
      element: "industrial",
      driftHalfWidthCelsius: 0.01,
      basis: `drift between its calibrations (${invented})`,
    },
  });
  await tellIntoService(teller, cast, id, 379);
  await tellCalibration(teller, cast, 150, {
    equipmentId: id,
    certificate: "NTL-26-10977",
    itemSerial: "P-2214",
    issuer: metrology.name,
    route: "accredited",
    performedOn: day(152),
    dueOn: day(-213),
    findings: {
      kind: "thermometer",
      curve: {
        form: "callendar-van-dusen",
        zeroOhm: 100.004,
        a: 3.9083e-3,
        b: -5.775e-7,
        c: -4.183e-12,
      },
      fromCelsius: -5,
      toCelsius: 60,
      expandedCelsius: 0.01,
      coverageFactor: 2,
      note: invented,
    },
  });
};
