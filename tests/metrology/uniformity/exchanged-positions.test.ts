import { describe, expect, it } from "vitest";
import {
  type ExchangeInput,
  type ExchangeReading,
  exchangedPositions,
} from "@/lib/metrology/uniformity/exchanged-positions";
import { problemOf, resultOf } from "../result-of";

const own: Readonly<Record<string, number>> = { X: 0.7, Y: -0.4, Z: 0.1 };
const field: Readonly<Record<string, number>> = { centre: 0, "1": 0.12, "2": -0.2 };

const read = (arrangement: number, pairs: Readonly<Record<string, string>>, noise = 0): ExchangeReading[] =>
  Object.entries(pairs).map(([place, sensor], i) => ({
    arrangement,
    place,
    sensor,
    // The furnace has moved on by 0.5 °C between one arrangement and the next.
    celsius:
      900 + 0.5 * arrangement + (field[place] as number) + (own[sensor] as number) + (i === 0 ? noise : 0),
  }));

const input = (readings: readonly ExchangeReading[]): ExchangeInput => ({
  readings,
  centre: "centre",
  meterCelsius: 0,
  statedRepeatability: null,
});

const swapped = [
  ...read(1, { centre: "X", "1": "Y" }),
  ...read(2, { centre: "Y", "1": "X" }),
  ...read(3, { centre: "X", "1": "Y" }),
];

describe("exchangedPositions", () => {
  it("cancels the sensors' own difference: half the sum of the swapped differences", () => {
    const result = resultOf(exchangedPositions(input(swapped)));
    expect(result.places[1]).toMatchObject({ place: "1" });
    expect(result.places[1]?.celsius).toBeCloseTo(0.12, 9);
    expect(result.halfRangeCelsius).toBeCloseTo(0.06, 9);
    expect(result.fullRangeCelsius).toBeCloseTo(0.12, 9);
    const [first, second] = result.sensors;
    expect([first?.sensor, first?.celsius, second?.sensor]).toEqual(["Y", 0, "X"]);
    expect(second?.celsius).toBeCloseTo(1.1, 9);
    expect(result.degreesOfFreedom).toBe(1);
  });

  it("gives u of one swap as the same arithmetic by hand", () => {
    const twice = swapped.slice(0, 4);
    const statedRepeatability = { deviation: 0.03, degreesOfFreedom: 12 };
    const result = resultOf(exchangedPositions({ ...input(twice), statedRepeatability }));
    // p = (d₁ + d₂)/2, each d a difference of two readings: u² = 4s²/4.
    expect(result.places[1]?.standardUncertainty).toBeCloseTo(0.03, 12);
    expect(result.standardUncertainty).toBeCloseTo(0.015, 12);
    expect(result.degreesOfFreedom).toBe(12);
    const metered = resultOf(
      exchangedPositions({ ...input(twice), statedRepeatability, meterCelsius: 0.04 }),
    );
    expect(metered.places[1]?.standardUncertainty).toBeCloseTo(0.05, 12);
  });

  it("ties several places to the centre by least squares", () => {
    const three = [
      ...read(1, { centre: "X", "1": "Y", "2": "Z" }, 0.02),
      ...read(2, { centre: "Y", "1": "Z", "2": "X" }, -0.01),
      ...read(3, { centre: "Z", "1": "X", "2": "Y" }, -0.01),
    ];
    const result = resultOf(exchangedPositions(input(three)));
    expect(result.places.map(({ place }) => place)).toEqual(["centre", "1", "2"]);
    expect(result.places[1]?.celsius).toBeCloseTo(0.12, 9);
    expect(result.places[2]?.celsius).toBeCloseTo(-0.2, 9);
    expect(result.halfRangeCelsius).toBeCloseTo(0.16, 9);
    expect(result.degreesOfFreedom).toBe(9 - 7);
    expect(result.deviation).toBeGreaterThan(0);
    // A Latin square: each place is the mean of three readings, u² of a difference 2s²/3.
    expect(result.standardUncertainty).toBeCloseTo((result.deviation * Math.sqrt(2 / 3)) / 2, 9);
  });

  it("refuses what cannot be told apart", () => {
    const refusedBy = (change: Partial<ExchangeInput>) =>
      problemOf(exchangedPositions({ ...input(swapped), ...change }));
    const never = [1, 2, 3].flatMap((n) => read(n, { centre: "X", "1": "Y" }));
    expect(refusedBy({ readings: never })).toBe("no-solution");
    expect(refusedBy({ readings: swapped.slice(0, 4) })).toBe("too-few");
    expect(refusedBy({ readings: [1, 2, 3].flatMap((n) => read(n, { centre: "X" })) })).toBe("too-few");
    expect(refusedBy({ centre: "middle" })).toBe("not-applicable");
    expect(refusedBy({ meterCelsius: -0.1 })).toBe("not-applicable");
    expect(refusedBy({ meterCelsius: Number.NaN })).toBe("not-finite");
    const first = swapped[0] as ExchangeReading;
    expect(refusedBy({ readings: [...swapped, { ...first, sensor: "Z" }] })).toBe("not-applicable");
    expect(refusedBy({ readings: [...swapped, { ...first, place: "2" }] })).toBe("not-applicable");
  });
});
