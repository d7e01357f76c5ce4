import { mean } from "@/lib/metrology/number/mean";
import { standardUncertainty } from "@/lib/metrology/uncertainty/standard-uncertainty";
import type { EvaluatedContribution } from "./evaluation";
import type { UncertaintyInput } from "./schema";

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
  readonly key: string;
  readonly label: string;
  readonly symbol: string;
  readonly estimate: number | null;
  readonly stage: Unit;
  /**
   * One part, or one for each reference: their mean then counts as one observation, since certificates,
   * meter and junction act on all of them alike and averaging takes nothing away (EA-4/02 S5).
   */
  readonly parts: readonly Part[];
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
export function contribution(spec: LineSpec): EvaluatedContribution {
  const reads = spec.parts.map((part) => readPart(part));
  const acting = reads.filter((read) => read.unit !== null);
  const identity = { key: spec.key, label: spec.label, symbol: spec.symbol, estimate: spec.estimate };
  const source = [...new Set(reads.map((read) => read.source))].join("; ");
  const first = acting[0];
  if (!first?.unit) {
    return {
      ...identity,
      standardUncertainty: 0,
      unit: spec.stage,
      distribution: "none",
      degreesOfFreedom: null,
      sensitivity: 1,
      sensitivityUnit: "1",
      effect: 0,
      source,
    };
  }
  return {
    ...identity,
    ...average(reads, acting, spec.stage),
    distribution: acting.every((read) => read.distribution === "rectangular") ? "rectangular" : "normal",
    degreesOfFreedom: fewest(acting),
    source,
  };
}

function readPart(part: Part): Read {
  const { input } = part;
  if (input.kind === "zero") {
    const nothing = { standard: 0, unit: null, sensitivity: 0, degreesOfFreedom: null };
    return { ...nothing, distribution: "none", source: input.reason };
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

function average(reads: readonly Read[], acting: readonly Read[], stage: Unit): Size {
  const first = acting[0] as Read;
  const unit = first.unit as Unit;
  const effect = mean(reads.map((read) => read.sensitivity * read.standard));
  const isAlike = reads.every(
    (read) =>
      read.unit === unit && read.standard === first.standard && read.sensitivity === first.sensitivity,
  );
  if (isAlike) {
    return {
      standardUncertainty: first.standard,
      unit,
      sensitivity: first.sensitivity,
      sensitivityUnit: sensitivityUnit(unit, stage),
      effect: first.sensitivity * first.standard,
    };
  }
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

function sensitivityUnit(unit: Unit, stage: Unit): string {
  return unit === stage ? "1" : `${stage}/${unit}`;
}

/** The least that any of them brings; null only if all are infinite. */
function fewest(reads: readonly Read[]): number | null {
  const finite = reads.flatMap((read) => (read.degreesOfFreedom === null ? [] : [read.degreesOfFreedom]));
  return finite.length === 0 ? null : Math.min(...finite);
}
