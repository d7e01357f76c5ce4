import { recordEquipment } from "@/lib/operations/equipment/record";
import { tellCalibration } from "./calibrations";
import type { Cast } from "./people";
import { metrology } from "./providers";
import { tellIntoService } from "./service";
import type { Teller } from "./teller";

const invented = "invented for the demonstration";

/**
 * A type R reference whose certificate has just run out: it is not offered for a run. Its new certificate has come as a
 * digital one (reference-certificate.dcc.xml beside this file) and waits to be read in.
 */
export const tellTypeRReference = async (teller: Teller, cast: Cast): Promise<void> => {
  const { tell, at, day } = teller;
  const { id } = await tell(recordEquipment, cast.technician, at(380), {
    tag: "REF-R-01",
    maker: "Perrin Noble Wire (invented)",
    model: "0.5 mm, twin-bore alumina",
    serial: "EM-R-1107",
    location: "Cabinet of references, tube 3",
    receivedOn: day(380),
    calibrationIntervalMonths: 24,
    requirement: { fromCelsius: 250, toCelsius: 1150, largestExpanded: 0.8, unit: "celsius" },
    particulars: {
      kind: "reference",
      type: "R",
      protection: "alumina-sheath",
      driftHalfWidthCelsius: 0.3,
      inhomogeneityRelativeHalfWidth: 0.0002,
      basis: `drift between its certificates; 0.02 % of the emf is common practice, no source (${invented})`,
    },
  });
  await tellIntoService(teller, cast, id, 379);
  await tellCalibration(teller, cast, 378, {
    equipmentId: id,
    certificate: "NTL-24-09883",
    itemSerial: "EM-R-1107",
    issuer: metrology.name,
    route: "accredited",
    performedOn: day(735),
    dueOn: day(5),
    findings: {
      kind: "reference",
      points: [
        [250, -0.8],
        [400, -1.6],
        [600, -2.5],
        [800, -3.2],
        [1000, -4.4],
        [1150, -5.4],
      ].map(([celsius = 0, deviationMicrovolt = 0]) => ({ celsius, deviationMicrovolt })),
      expanded: 6.2,
      coverageFactor: 2,
      unit: "microvolt",
      note: invented,
    },
  });
};
