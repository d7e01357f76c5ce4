import { fixedPoints } from "@/lib/domain/calibration/thermometer-findings";
import { number, optionalNumber, parseDecimal, rows, text } from "@/lib/web/form-fields";

const points = (data: FormData, name: string, columns: readonly string[]) =>
  rows(data, `findings.${name}`, columns).map((row) =>
    Object.fromEntries(Object.entries(row).map(([column, typed]) => [column, parseDecimal(typed)])),
  );

const figure = (data: FormData, name: string): number => number(data, `findings.${name}`);

/** Undefined where none was written at all; half an equation is for the schema to refuse. */
const equation = (data: FormData): Record<string, unknown> | undefined => {
  const kind = text(data, "findings.equation.kind");
  const terms = points(data, "equation.terms", ["coefficient"]);
  if (kind === "" && terms.length === 0) return undefined;
  return {
    kind,
    terms,
    fromCelsius: figure(data, "equation.fromCelsius"),
    toCelsius: figure(data, "equation.toCelsius"),
  };
};

/** The function of a platinum thermometer; an empty ratio was not measured. */
const curve = (data: FormData): Record<string, unknown> => {
  const form = text(data, "findings.curve.form");
  if (form !== "sprt")
    return {
      form,
      zeroOhm: figure(data, "curve.zeroOhm"),
      a: figure(data, "curve.a"),
      b: figure(data, "curve.b"),
      c: optionalNumber(data, "findings.curve.c"),
    };
  const ratios = fixedPoints.flatMap((point) => {
    const ratio = optionalNumber(data, `findings.curve.ratios.${point}`);
    return ratio === undefined ? [] : [[point, ratio] as const];
  });
  return {
    form,
    section: text(data, "findings.curve.section"),
    waterOhm: figure(data, "curve.waterOhm"),
    ratios: Object.fromEntries(ratios),
  };
};

/** Left out where nothing of it was written. */
const humidity = (data: FormData): Record<string, unknown> | undefined => {
  const correctionPercent = optionalNumber(data, "findings.humidity.correctionPercent");
  const expandedPercent = optionalNumber(data, "findings.humidity.expandedPercent");
  return correctionPercent === undefined && expandedPercent === undefined
    ? undefined
    : { correctionPercent, expandedPercent };
};

/** What the certificate says, in the shape of its kind. */
export const parseFindings = (data: FormData): Record<string, unknown> => {
  const kind = text(data, "findings.kind");
  const note = text(data, "findings.note");
  switch (kind) {
    case "reference":
      return {
        kind,
        points: points(data, "points", ["celsius", "deviationMicrovolt"]),
        equation: equation(data),
        singlePointReachCelsius: optionalNumber(data, "findings.singlePointReachCelsius"),
        expanded: figure(data, "expanded"),
        coverageFactor: figure(data, "coverageFactor"),
        unit: text(data, "findings.unit"),
        degreesOfFreedom: optionalNumber(data, "findings.degreesOfFreedom"),
        note,
      };
    case "voltmeter":
      return {
        kind,
        corrections: points(data, "corrections", ["microvolt", "correctionMicrovolt"]),
        expandedMicrovolt: figure(data, "expandedMicrovolt"),
        coverageFactor: figure(data, "coverageFactor"),
        note,
      };
    case "scanner":
      return { kind, parasiticHalfWidthMicrovolt: figure(data, "parasiticHalfWidthMicrovolt"), note };
    case "thermometer":
      return {
        kind,
        curve: curve(data),
        fromCelsius: figure(data, "fromCelsius"),
        toCelsius: figure(data, "toCelsius"),
        expandedCelsius: figure(data, "expandedCelsius"),
        coverageFactor: figure(data, "coverageFactor"),
        note,
      };
    case "lead":
      return {
        kind,
        correctionMicrovolt: figure(data, "correctionMicrovolt"),
        fromCelsius: figure(data, "fromCelsius"),
        toCelsius: figure(data, "toCelsius"),
        expandedMicrovolt: figure(data, "expandedMicrovolt"),
        coverageFactor: figure(data, "coverageFactor"),
        note,
      };
    case "ambient":
      return {
        kind,
        correctionCelsius: figure(data, "correctionCelsius"),
        expandedCelsius: figure(data, "expandedCelsius"),
        humidity: humidity(data),
        coverageFactor: figure(data, "coverageFactor"),
        note,
      };
    default:
      return {
        kind,
        celsius: figure(data, "celsius"),
        expandedCelsius: figure(data, "expandedCelsius"),
        coverageFactor: figure(data, "coverageFactor"),
        note,
      };
  }
};
