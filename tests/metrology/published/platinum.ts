import { iec60751 } from "@/lib/metrology/platinum/callendar-van-dusen";
import { its90Ratio } from "@/lib/metrology/platinum/its-90-ratio";
import { platinumResistance } from "@/lib/metrology/platinum/platinum-resistance";
import { platinumTolerance } from "@/lib/metrology/platinum/platinum-tolerance";
import { sprtCalibration } from "@/lib/metrology/platinum/sprt-calibration";
import { iec60751Resistances, iec60751Tolerances } from "../vectors/iec-60751";
import { its90Ratios, sprtCertificate, sprtCertificateRatios } from "../vectors/its-90";
import { checks, tableChecks } from "./check";
import { unwrap } from "./unwrap";

const certificate = () => unwrap(sprtCalibration("3.3.3", sprtCertificateRatios));

export const platinumChecks = [
  ...tableChecks(its90Ratios, (kelvin) => unwrap(its90Ratio(kelvin))),
  ...checks(sprtCertificate, { a: () => certificate().a, b: () => certificate().b }),
  ...tableChecks(iec60751Resistances, (celsius) => unwrap(platinumResistance(iec60751, celsius))),
  ...tableChecks(iec60751Tolerances, ([toleranceClass, celsius]) =>
    unwrap(platinumTolerance(toleranceClass, "wire", celsius)),
  ),
];
