import type { CertificateContent } from "../certificate/content";
import type { Equipment } from "../equipment/types";
import { ok, type Result, refuse } from "../refusal";
import { Findings, type FindingsOf } from "./findings";
import { printedNumber } from "./printed-number";
import { isSameSerial } from "./same-serial";

/** Our own certificate as the calibration of a working standard, figure by figure as it is printed; nothing is typed. */
export type InHouseCalibration = {
  readonly certificate: string;
  readonly itemSerial: string;
  readonly issuer: string;
  readonly performedOn: string;
  readonly scale: string;
  readonly conditions: string;
  readonly traceabilityStatement: string;
  readonly findings: FindingsOf<"reference">;
};

const isOwn = ({ customer, laboratory }: CertificateContent): boolean =>
  customer.name.trim().toLowerCase() === laboratory.name.trim().toLowerCase();

/** Whether a certificate of ours is of this very working standard: our own sensor, its serial number and type. */
export const isCertificateOf = (
  { serial, particulars }: Pick<Equipment, "serial" | "particulars">,
  content: CertificateContent,
): boolean =>
  isOwn(content) &&
  particulars.kind === "reference" &&
  particulars.type === content.item.typeLetter &&
  isSameSerial(serial, content.item.serial);

type Point = {
  readonly celsius: number;
  readonly deviationMicrovolt: number;
  readonly expandedMicrovolt: number;
  readonly coverageFactor: number;
};

const pointsOf = ({ rows }: CertificateContent): readonly Point[] =>
  rows
    .filter(({ state }) => state === "measured")
    .map((row) => ({
      celsius: printedNumber(row.nominalCelsius),
      deviationMicrovolt: printedNumber(row.deviationMicrovolt),
      expandedMicrovolt: printedNumber(row.expandedMicrovolt),
      coverageFactor: printedNumber(row.coverageFactor),
    }))
    .sort((one, other) => one.celsius - other.celsius);

/** One U stands for all points: that of the point whose standard uncertainty U/k is largest, with its own k. */
const least = (points: readonly Point[]): Point | undefined =>
  points.reduce<Point | undefined>(
    (worst, point) =>
      worst === undefined ||
      point.expandedMicrovolt / point.coverageFactor > worst.expandedMicrovolt / worst.coverageFactor
        ? point
        : worst,
    undefined,
  );

export const inHouseCalibration = (
  equipment: Pick<Equipment, "tag" | "serial" | "particulars">,
  content: CertificateContent,
): Result<InHouseCalibration> => {
  if (!isCertificateOf(equipment, content))
    return refuse(
      "rule",
      `Certificate ${content.number} is not of ${equipment.tag}: it takes an order of the laboratory's own, with the same serial number and type.`,
    );
  const points = pointsOf(content);
  const worst = least(points);
  const findings = Findings.safeParse({
    kind: "reference",
    points: points.map(({ celsius, deviationMicrovolt }) => ({ celsius, deviationMicrovolt })),
    expanded: worst?.expandedMicrovolt,
    coverageFactor: worst?.coverageFactor,
    unit: "microvolt",
    note: `Largest U of ${points.length} points of our own certificate ${content.number}.`,
  });
  if (!findings.success || findings.data.kind !== "reference")
    return refuse(
      "rule",
      `Certificate ${content.number} has no measured point that a reference could stand on.`,
    );
  return ok({
    certificate: content.number,
    itemSerial: content.item.serial,
    issuer: content.laboratory.name,
    performedOn: content.performedTo,
    scale: "ITS-90",
    conditions: content.conditions.join("\n").slice(0, 1000),
    traceabilityStatement: content.traceabilityStatement,
    findings: findings.data,
  });
};
