import { roundHalfEven } from "@/lib/metrology/number/decimal";
import { typeset } from "@/lib/metrology/reporting/typeset";
import type { EvaluatedPoint, MeasuredPoint } from "../evidence/evaluation";
import { type Draft, givenWhole, type Said, say, sayAll } from "./catalogue/message";
import type { CertificateRow } from "./content";
import { fahrenheitRow } from "./fahrenheit-row";
import type { CertificateParts } from "./parts";
import { beyondStandard, isBeyondStandard } from "./reference-source";

/** A run's setpoint is the customer's when it is the same temperature but for the rounding of °F. */
const sameTemperatureCelsius = 0.006;

const orderedSetpoint = (order: Pick<CertificateParts["order"], "setpoints">, celsius: number) =>
  order.setpoints.find((setpoint) => Math.abs(setpoint.celsius - celsius) <= sameTemperatureCelsius);

const plainCelsius = (celsius: number): string => String(Number(celsius.toFixed(2)));

/** A point's setpoint as the customer ordered it, in their unit. */
export const setpointText = (
  order: Pick<CertificateParts["order"], "setpoints" | "temperatureUnit">,
  celsius: number,
): string => {
  const ordered = orderedSetpoint(order, celsius);
  return ordered ? `${ordered.typed} °${order.temperatureUnit}` : `${plainCelsius(celsius)} °C`;
};

/** 7.1.3: a statement of conformity only where the customer asked for one and a rule was agreed. */
export const statesConformity = (order: CertificateParts["order"]): boolean =>
  order.decisionRule.kind !== "none" && order.toleranceStandard !== "";

const noStatement = { state: "no-statement", tolerance: "", probability: "" } as const;
const blank = {
  referenceCelsius: "",
  emfMicrovolt: "",
  deviationMicrovolt: "",
  expandedMicrovolt: "",
  errorCelsius: "",
  correctionCelsius: "",
  expandedCelsius: "",
  coverageFactor: "",
} as const;

/** Two digits finer than the error printed, so that what was decided unrounded is seen in the figures. */
export const acceptance = (point: MeasuredPoint): { readonly acceptance?: string } => {
  const { acceptanceCelsius } = point.conformity;
  const decimals = (point.printed.errorCelsius.split(".")[1]?.length ?? 0) + 2;
  return acceptanceCelsius === null
    ? {}
    : { acceptance: typeset(roundHalfEven(acceptanceCelsius, decimals)) };
};

const inARow = (remarks: readonly Said[]): Said => (remarks.length === 0 ? "" : sayAll(remarks));

/** 7.8.2.1 p: marked row by row. */
const external = (isExternal: boolean): { readonly isExternal?: true } =>
  isExternal ? { isExternal: true } : {};

const composeRow = (
  order: CertificateParts["order"],
  point: EvaluatedPoint,
  isExternal: boolean,
): Draft<CertificateRow> => {
  const setpoint = setpointText(order, point.nominalCelsius);
  if (point.state !== "measured")
    return {
      state: point.state,
      setpoint,
      nominalCelsius: plainCelsius(point.nominalCelsius),
      ...blank,
      plot: null,
      conformity: noStatement,
      remark: point.reason === "" ? "" : givenWhole(point.reason),
      ...external(isExternal),
    };
  const { degreesOfFreedom: _, ...printed } = point.printed;
  const stated = statesConformity(order);
  return {
    state: "measured",
    setpoint,
    ...printed,
    coverageProbability: String(Number(point.coverage.probability.toFixed(4))),
    ...(isExternal || point.scope.state === "not-stated" ? {} : { scope: point.scope.state }),
    plot: {
      celsius: point.nominalCelsius,
      errorCelsius: point.errorCelsius,
      expandedCelsius: point.expandedCelsius,
      toleranceCelsius: stated ? (point.conformity.tolerance?.celsius ?? null) : null,
    },
    conformity: stated
      ? {
          state: point.conformity.state,
          tolerance: point.conformity.printed.tolerance ? `± ${point.conformity.printed.tolerance}` : "",
          probability: point.conformity.printed.probability ?? "",
          ...acceptance(point),
        }
      : noStatement,
    ...(order.temperatureUnit === "F" ? { fahrenheit: fahrenheitRow(point, stated) } : {}),
    remark: inARow([
      ...(orderedSetpoint(order, point.nominalCelsius) ? [] : [say("row.in-addition")]),
      ...(isBeyondStandard(point) ? [beyondStandard] : []),
    ]),
    ...external(isExternal),
  };
};

/** Rows in the order of the run's setpoints. Numbers are the printed strings of the evaluation, untouched. */
export const composeRows = (parts: CertificateParts): readonly Draft<CertificateRow>[] =>
  parts.points.map((point) => composeRow(parts.order, point, parts.provider !== undefined));

/** What was ordered and is not among the points: said under deviations, never left out in silence. */
export const missingSetpoints = (parts: CertificateParts): string[] =>
  parts.order.setpoints
    .filter(
      (ordered) =>
        ![
          ...parts.points.map(({ nominalCelsius }) => nominalCelsius),
          ...(parts.elsewhereCelsius ?? []),
        ].some((celsius) => Math.abs(celsius - ordered.celsius) <= sameTemperatureCelsius),
    )
    .map((ordered) => `${ordered.typed} °${parts.order.temperatureUnit}`);
