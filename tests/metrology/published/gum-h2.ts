import { mean } from "@/lib/metrology/number/mean";
import { sum } from "@/lib/metrology/number/sum";
import { combineCorrelated } from "@/lib/metrology/uncertainty/combine-correlated";
import { gumH2, gumH2Readings } from "../vectors/gum-h2";
import { checks } from "./check";
import { unwrap } from "./unwrap";

/** Covariance of two means, JCGM 100:2008, equation (17). */
function covariance(a: readonly number[], b: readonly number[]): number {
  const [meanA, meanB] = [mean(a), mean(b)];
  return sum(a.map((x, i) => (x - meanA) * ((b[i] as number) - meanB))) / (a.length * (a.length - 1));
}

const I = gumH2Readings.I.map((milliampere) => milliampere / 1000);
const { V, phi } = gumH2Readings;
const [v, i, angle] = [mean(V), mean(I), mean(phi)];
const [uV, uI, uPhi] = [V, I, phi].map((x) => Math.sqrt(covariance(x, x))) as [number, number, number];
const rVI = covariance(V, I) / (uV * uI);
const rVPhi = covariance(V, phi) / (uV * uPhi);
const rIPhi = covariance(I, phi) / (uI * uPhi);
const [R, X] = [(v / i) * Math.cos(angle), (v / i) * Math.sin(angle)];

/** u_c from the sensitivities to V, I and φ. */
function combined(cV: number, cI: number, cPhi: number): number {
  const effects = [cV * uV, cI * uI, cPhi * uPhi].map((effect) => ({ effect, degreesOfFreedom: null }));
  return unwrap(
    combineCorrelated(effects, [
      { first: 0, second: 1, coefficient: rVI },
      { first: 0, second: 2, coefficient: rVPhi },
      { first: 1, second: 2, coefficient: rIPhi },
    ]),
  ).standardUncertainty;
}

export const gumH2Checks = checks(gumH2, {
  V: () => v,
  I: () => i,
  phi: () => angle,
  uV: () => uV,
  uI: () => uI,
  uPhi: () => uPhi,
  rVI: () => rVI,
  rVPhi: () => rVPhi,
  rIPhi: () => rIPhi,
  R: () => R,
  X: () => X,
  Z: () => v / i,
  uR: () => combined(R / v, -R / i, -X),
  uX: () => combined(X / v, -X / i, R),
  uZ: () => combined(1 / i, -v / (i * i), 0),
});
