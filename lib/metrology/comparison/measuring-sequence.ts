import { mean } from "../number/mean";
import { found, type Outcome, refused } from "../outcome";

/** One step of a measuring sequence: which thermocouple is read, and whether its leads are reversed (−1). */
export type SequenceStep = { readonly item: string; readonly polarity: 1 | -1 };

/**
 * A sequence as data. `bracketing`: references before and after, the second half mirroring the first. `continuous`: the
 * scanner goes round and round, each reading with its own time, references first and last in the scan.
 */
export type MeasuringSequence =
  | {
      readonly kind: "bracketing";
      readonly first: string;
      readonly sensors: readonly string[];
      readonly second: string;
      readonly reversals: "none" | "after-each-bracket";
      readonly brackets: number;
    }
  | {
      readonly kind: "continuous";
      /** In the order of the scan; a shorted channel is an item like any other. */
      readonly scan: readonly string[];
      readonly scans: number;
    };

/**
 * The steps of a sequence in order: S1 X S2 | S2 X S1 for each bracket, with reversed polarity the same again (EA-4/02 S5,
 * S5.15). No unit. Problems: `not-applicable` for a count that is not a whole number from 1, or nothing to read.
 */
export function sequenceSteps(sequence: MeasuringSequence): Outcome<readonly SequenceStep[]> {
  const isBracketing = sequence.kind === "bracketing";
  const count = isBracketing ? sequence.brackets : sequence.scans;
  if (!(count >= 1 && Math.floor(count) === count)) {
    return refused("not-applicable", `${count} rounds of a sequence: a whole number from 1`);
  }
  const items = isBracketing ? sequence.sensors : sequence.scan;
  if (items.length === 0) return refused("not-applicable", "the sequence reads nothing");
  const steps: SequenceStep[] = [];
  for (let round = 0; round < count; round += 1) {
    if (isBracketing) steps.push(...bracket(sequence));
    else steps.push(...sequence.scan.map((item) => ({ item, polarity: 1 as const })));
  }
  return found(steps);
}

function bracket(sequence: Extract<MeasuringSequence, { kind: "bracketing" }>): SequenceStep[] {
  const there = [sequence.first, ...sequence.sensors, sequence.second];
  const items = [...there, ...there.toReversed()];
  const polarities: readonly (1 | -1)[] = sequence.reversals === "none" ? [1] : [1, -1];
  return polarities.flatMap((polarity) => items.map((item) => ({ item, polarity })));
}

/** Where each item stands on average, in steps from the first, and whether all stand at one place. */
export type SequenceBalance = {
  readonly centres: ReadonlyMap<string, number>;
  readonly cancelsLinearDrift: boolean;
};

/** Centres are halves of whole numbers: less than this apart is rounding. */
const ROUNDING = 1e-9;

/**
 * Whether equally spaced steps take a linear drift out of the means: they do when every item's mean place is the same
 * (arithmetic; the order of reading of EA-4/02 S5 does). In steps. A continuous scan
 * never does: its readings are brought to one time by their own times. Problems: `too-few` without steps.
 */
export function sequenceBalance(steps: readonly SequenceStep[]): Outcome<SequenceBalance> {
  if (steps.length === 0) return refused("too-few", "a sequence without steps");
  const places = new Map<string, number[]>(steps.map(({ item }) => [item, []]));
  for (const [place, { item }] of steps.entries()) (places.get(item) as number[]).push(place);
  const centres = new Map([...places].map(([item, all]) => [item, mean(all)]));
  const values = [...centres.values()];
  return found({
    centres,
    cancelsLinearDrift: Math.max(...values) - Math.min(...values) < ROUNDING,
  });
}
