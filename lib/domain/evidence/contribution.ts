import { mean } from "@/lib/metrology/number/mean";
import { standardUncertainty } from "@/lib/metrology/uncertainty/standard-uncertainty";
import { budgetLines, excludedBy, type LineKey } from "./budget-lines";
import type { EvaluatedContribution } from "./evaluation";
import type { UncertaintyInput } from "./uncertainty-input";

/** A line of a budget, made with a share of 0. */
export type Line = Omit<EvaluatedContribution, "share" | "key" | "estimate"> & {
  readonly key: LineKey;
  /** The first line of a stage holds the sensor's own. */
  estimate: number | null;
  /** Set by whoever made the lines, once all of them are known. */
  share: number;
};

type Unit = EvaluatedContribution["unit"];

/** One stated input as it acts on the stage: how much a µV and a °C of it count there. */
export type Part = {
  readonly input: UncertaintyInput;
  /** What a relative input is a fraction of, µV. */
  readonly emfMicrovolt: number;
  readonly perMicrovolt: number;
  readonly perCelsius: number;
};

export type LineSpec = {
  readonly key: LineKey;
  readonly estimate: number | null;
  readonly stage: Unit;
  /** One part, or one for each reference: the line is then that of their mean. */
  readonly parts: readonly Part[];
  /** Correlation of one part's error with another's; fully if left out, so that the mean takes nothing off. */
  readonly between?: (one: number, other: number) => number;
};

type Read = {
  readonly standard: number;
  readonly unit: Unit | null;
  readonly sensitivity: number;
  readonly distribution: EvaluatedContribution["distribution"];
  readonly degreesOfFreedom: number | null;
  readonly source: string;
};

/** A line of a budget. A zero input stays in the list, with effect 0 and its reason. */
export function contribution(spec: LineSpec): Line {
  const reads = spec.parts.map(readPart);
  const acting = reads.filter(isActing);
  const { label, symbol } = budgetLines[spec.key];
  const size = acting.length === 0 ? nothing(spec.stage) : average(reads, acting, spec);
  return {
    kind: "input",
    key: spec.key,
    label,
    symbol,
    estimate: spec.estimate,
    standardUncertainty: size.standardUncertainty,
    unit: size.unit,
    distribution: distributionOf(acting, spec),
    degreesOfFreedom: fewest(acting),
    sensitivity: size.sensitivity,
    sensitivityUnit: size.sensitivityUnit,
    effect: size.effect,
    variance: size.effect * size.effect,
    share: 0,
    excludes: excludedBy(spec.key),
    source: sourceOf(reads),
  };
}

const isActing = (read: Read): boolean => read.unit !== null;

const nothing = (stage: Unit): Size => ({
  standardUncertainty: 0,
  unit: stage,
  sensitivity: 1,
  sensitivityUnit: "1",
  effect: 0,
});

/** The mean of rectangles that are not one error is no rectangle: it is on its way to the normal. */
function distributionOf(acting: readonly Read[], spec: LineSpec): EvaluatedContribution["distribution"] {
  if (acting.length === 0) return "none";
  const isRectangular = acting.every((read) => read.distribution === "rectangular");
  return isRectangular && isFullyCorrelated(spec) ? "rectangular" : "normal";
}

/** What each part rests on, each thing said once. */
function sourceOf(reads: readonly Read[]): string {
  const first = reads[0]?.source ?? "";
  return reads.every((read) => read.source === first)
    ? first
    : [...new Set(reads.map((read) => read.source))].join("; ");
}

function readPart(part: Part): Read {
  const { input } = part;
  if (input.kind === "zero") {
    const absent = { standard: 0, unit: null, sensitivity: 0, degreesOfFreedom: null };
    return { ...absent, distribution: "none", source: input.reason };
  }
  const stated = standardUncertainty(input);
  const isCelsius = input.unit === "celsius";
  return {
    standard: input.unit === "relative" ? stated * Math.abs(part.emfMicrovolt) : stated,
    unit: isCelsius ? "°C" : "µV",
    sensitivity: isCelsius ? part.perCelsius : part.perMicrovolt,
    distribution: input.kind === "rectangular" ? "rectangular" : "normal",
    degreesOfFreedom: "degreesOfFreedom" in input ? (input.degreesOfFreedom ?? null) : null,
    source: input.source,
  };
}

type Size = Pick<
  EvaluatedContribution,
  "standardUncertainty" | "unit" | "sensitivity" | "sensitivityUnit" | "effect"
>;

function average(reads: readonly Read[], acting: readonly Read[], spec: LineSpec): Size {
  const { stage } = spec;
  const first = acting[0] as Read;
  const unit = first.unit as Unit;
  const isAlike = reads.every(
    (read) =>
      read.unit === unit && read.standard === first.standard && read.sensitivity === first.sensitivity,
  );
  const isOne = isFullyCorrelated(spec);
  if (isAlike && isOne) {
    return {
      standardUncertainty: first.standard,
      unit,
      sensitivity: first.sensitivity,
      sensitivityUnit: sensitivityUnit(unit, stage),
      effect: first.sensitivity * first.standard,
    };
  }
  const effects = reads.map((read) => read.sensitivity * read.standard);
  const effect = isOne ? mean(effects) : effectOfMean(effects, spec);
  const isOneUnit = acting.every((read) => read.unit === unit);
  const standard = mean(reads.map((read) => read.standard));
  if (isOneUnit && standard > 0) {
    return {
      standardUncertainty: standard,
      unit,
      sensitivity: effect / standard,
      sensitivityUnit: sensitivityUnit(unit, stage),
      effect,
    };
  }
  // Stated in °C for one reference and in µV for another: only the effects can be put together.
  return {
    standardUncertainty: Math.abs(effect),
    unit: stage,
    sensitivity: effect < 0 ? -1 : 1,
    sensitivityUnit: "1",
    effect,
  };
}

function isFullyCorrelated({ parts, between }: LineSpec): boolean {
  if (!between) return true;
  return parts.every((_, i) => parts.every((__, j) => i === j || between(i, j) === 1));
}

/** u of the mean of n partly correlated errors: √(ΣΣ rᵢⱼ·eᵢ·eⱼ)/n, with the sign they have together. */
function effectOfMean(effects: readonly number[], { between }: LineSpec): number {
  let variance = 0;
  effects.forEach((one, i) => {
    effects.forEach((other, j) => {
      variance += (i === j ? 1 : (between?.(i, j) ?? 1)) * one * other;
    });
  });
  const size = Math.sqrt(Math.max(0, variance)) / effects.length;
  return mean(effects) < 0 ? -size : size;
}

function sensitivityUnit(unit: Unit, stage: Unit): string {
  return unit === stage ? "1" : `${stage}/${unit}`;
}

/** The least that any of them brings; null only if all are infinite. */
function fewest(reads: readonly Read[]): number | null {
  const finite = reads.flatMap((read) => (read.degreesOfFreedom === null ? [] : [read.degreesOfFreedom]));
  return finite.length === 0 ? null : Math.min(...finite);
}
