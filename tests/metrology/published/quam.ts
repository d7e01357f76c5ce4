import { combine } from "@/lib/metrology/uncertainty/combine";
import { standardDeviation } from "@/lib/metrology/uncertainty/distribution";
import { quamA1, quamA2, quamA3 } from "../vectors/quam";
import { checks } from "./check";

const rectangular = (halfWidth: number) => standardDeviation({ kind: "rectangular", halfWidth });
const triangular = (halfWidth: number) => standardDeviation({ kind: "triangular", halfWidth });
const combined = (...effects: readonly number[]): number =>
  combine(effects.map((effect) => ({ effect, degreesOfFreedom: null }))).standardUncertainty;

// A1: c = 1000·m·P/V.
const c1 = (1000 * 100.28 * 0.9999) / 100;
const mass1 = (c1 / 100.28) * 0.05;
const purity1 = (c1 / 0.9999) * rectangular(0.0001);
const flask1 = (c1 / 100) * triangular(0.1);
const filling1 = (c1 / 100) * 0.02;
const temperature1 = (c1 / 100) * rectangular(0.084);
const volume1 = combined(flask1, filling1, temperature1);

// A2 and A3: products and quotients, so that each relative uncertainty is its own.
const molar = 8 * 12.0107 + 5 * 1.00794 + 4 * 15.9994 + 39.0983;
const relativeMolar =
  combined(8 * rectangular(0.0008), 5 * rectangular(0.00007), 4 * rectangular(0.0003), rectangular(0.0001)) /
  molar;
const relativeMass = combined(rectangular(0.15e-3), rectangular(0.15e-3)) / 0.3888;
const relativePurity = rectangular(0.0005);

const c2 = (1000 * 0.3888) / (molar * 18.64);
const relative2 = combined(triangular(0.03), 0.006) / 18.64;
const all2 = [relative2, 0.0005, relativeMass, relativePurity, relativeMolar].map((part) => c2 * part);

const expansion = (millilitre: number) => rectangular(millilitre * 2.1e-4 * 4);
const c3 = (1000 * 0.3888 * 14.89) / (molar * 18.64 * 15);
const two3 = combined(triangular(0.03), expansion(15)) / 14.89;
const one3 = combined(triangular(0.03), expansion(19)) / 18.64;
const aliquot3 = combined(triangular(0.02), expansion(15)) / 15;
const all3 = [0.001, two3, one3, aliquot3, relativeMass, relativePurity, relativeMolar].map(
  (part) => c3 * part,
);
const at = (parts: readonly number[], place: number) => () => parts[place] as number;

export const quamChecks = [
  ...checks(quamA1, {
    a1Value: () => c1,
    a1Combined: () => combined(mass1, purity1, volume1),
    a1Mass: () => mass1,
    a1Temperature: () => temperature1,
    a1Flask: () => flask1,
    a1Filling: () => filling1,
    a1Purity: () => purity1,
    a1Volume: () => volume1,
  }),
  ...checks(quamA2, {
    a2Value: () => c2,
    a2Combined: () => combined(...all2),
    a2Volume: at(all2, 0),
    a2Repeatability: at(all2, 1),
    a2Mass: at(all2, 2),
    a2Purity: at(all2, 3),
    a2Molar: at(all2, 4),
  }),
  ...checks(quamA3, {
    a3Value: () => c3,
    a3Combined: () => combined(...all3),
    a3Repeatability: at(all3, 0),
    a3VolumeTwo: at(all3, 1),
    a3VolumeOne: at(all3, 2),
    a3Aliquot: at(all3, 3),
    a3Mass: at(all3, 4),
    a3Purity: at(all3, 5),
    a3Molar: at(all3, 6),
  }),
];
