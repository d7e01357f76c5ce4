import { exponential } from "@/lib/metrology/number/exponential";
import type { Outcome } from "@/lib/metrology/outcome";
import { emfSeries } from "@/lib/metrology/thermocouple/emf-series";
import { type Piece, temperatureRange } from "@/lib/metrology/thermocouple/reference-function";
import { referenceFunctions, type ThermocoupleType } from "@/lib/metrology/thermocouple/reference-functions";
import { temperatureSeries } from "@/lib/metrology/thermocouple/temperature-series";
import { compare, type Figure } from "./measure";

const count = 1_000_000;
const rounds = 15;

/**
 * In no order, as the worst case: neighbouring values are on different pieces. Evenly spread by the golden
 * ratio.
 */
const spread = (from: number, to: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => from + (to - from) * ((i * 0.618033988749895) % 1));

const known = (outcome: Outcome<Float64Array>): Float64Array => {
  if (!outcome.ok) throw new Error(outcome.problem.message);
  return outcome.value;
};

/**
 * The baseline: Horner's scheme and nothing else, no range, no pieces; with the piece's exponential where it
 * has one.
 */
const bareLoop = (piece: Piece, celsius: Float64Array, into: Float64Array): void => {
  const c = piece.millivolt;
  const { gaussian } = piece;
  if (gaussian) {
    const { millivolt: height, perSquareCelsius: a, centreCelsius } = gaussian;
    for (let i = 0; i < celsius.length; i++) {
      const t = celsius[i] as number;
      let value = 0;
      for (let k = c.length - 1; k >= 0; k--) value = value * t + (c[k] as number);
      const d = t - centreCelsius;
      into[i] = (value + height * exponential(a * d * d)) * 1000;
    }
    return;
  }
  for (let i = 0; i < celsius.length; i++) {
    const t = celsius[i] as number;
    let value = 0;
    for (let k = c.length - 1; k >= 0; k--) value = value * t + (c[k] as number);
    into[i] = value * 1000;
  }
};

/**
 * emf and exact inverse of a type over its whole range (from −200 °C), against the bare loop of its longest
 * piece, or of the one with the exponential.
 */
export const benchReferenceFunction = async (type: ThermocoupleType): Promise<Figure[]> => {
  const reference = referenceFunctions[type];
  const { fromCelsius, toCelsius } = temperatureRange(reference);
  const pieces: readonly Piece[] = reference.pieces;
  const longest = pieces.reduce((a, b) => (b.millivolt.length > a.millivolt.length ? b : a));
  const piece = pieces.find(({ gaussian }) => gaussian) ?? longest;
  const celsius = spread(Math.max(reference.inverseFromCelsius ?? fromCelsius, -200), toCelsius);
  const microvolt = known(emfSeries(reference, celsius));
  const into = new Float64Array(count);
  const baseline = `bare Horner loop of degree ${piece.millivolt.length - 1}${piece.gaussian ? " with the same exponential" : ""}`;
  const bare = (): void => bareLoop(piece, celsius, into);
  const emf = await compare(
    {
      name: `emf of type ${type}, ${count} values`,
      ours: "emfSeries: range, pieces, the bits of emf",
      baseline,
    },
    () => {
      known(emfSeries(reference, celsius, into));
    },
    bare,
    rounds,
  );
  const inverse = await compare(
    {
      name: `Temperature of type ${type}, ${count} values`,
      ours: "temperatureSeries: exact inverse",
      baseline,
    },
    () => {
      known(temperatureSeries(reference, microvolt, into));
    },
    bare,
    rounds,
  );
  return [emf, inverse];
};
