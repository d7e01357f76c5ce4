import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { roundHalfEven } from "@/lib/metrology/number/decimal";
import { emf, pieceEmf } from "@/lib/metrology/thermocouple/emf";
import { isWithinIecRange } from "@/lib/metrology/thermocouple/is-within-iec-range";
import { type Piece, temperatureRange } from "@/lib/metrology/thermocouple/reference-function";
import { referenceFunctions, type ThermocoupleType } from "@/lib/metrology/thermocouple/reference-functions";
import { pieceSeebeck, seebeck } from "@/lib/metrology/thermocouple/seebeck";
import { seebeckSlope } from "@/lib/metrology/thermocouple/seebeck-slope";
import { fixedPoints, seebeckGrid } from "../vectors/fixed-points";
import { nistTables } from "../vectors/nist-tables";
import { otherReferenceFunctions } from "../vectors/other-reference-functions";
import { readNistTable } from "../vectors/read-nist-table";

const letters = ["B", "E", "J", "K", "N", "R", "S", "T"] as const;
const types = Object.keys(referenceFunctions) as ThermocoupleType[];

function emfOf(type: ThermocoupleType, celsius: number): number {
  const result = emf(referenceFunctions[type], celsius);
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
}

/** Worst difference from a table in mV; the table is rounded to 0.001 mV, so 0.0005 is its own. */
function worstDifference(type: ThermocoupleType, table: readonly (readonly [number, string])[]): number {
  return table.reduce(
    (worst, [celsius, millivolt]) =>
      Math.max(worst, Math.abs(emfOf(type, celsius) / 1000 - Number(millivolt))),
    0,
  );
}

const folder = process.env.REFERENCE_DIR;

describe("reference functions against the tables of NIST SRD 60", () => {
  it.each(letters)("type %s, the shipped values: every 10 °C, joins and ends", (type) => {
    const { fromCelsius, toCelsius } = temperatureRange(referenceFunctions[type]);
    const shipped = new Set(nistTables[type].map(([celsius]) => celsius));
    for (let t = fromCelsius; t <= toCelsius; t += 10) expect(shipped.has(t)).toBe(true);
    expect(worstDifference(type, nistTables[type])).toBeLessThanOrEqual(0.0005);
  });

  it.each(letters)("type %s would notice a wrong last digit of the table", (type) => {
    for (const [t, e] of nistTables[type]) {
      const bent = [[t, (Number(e) + 0.001).toFixed(3)]] as const;
      expect(worstDifference(type, bent)).toBeGreaterThan(0.0005);
    }
  });

  const rows = { B: 1821, E: 1271, J: 1411, K: 1643, N: 1571, R: 1819, S: 1819, T: 671 } as const;
  it("has 12 026 rows in all", () => {
    expect(Object.values(rows).reduce<number>((total, count) => total + count, 0)).toBe(12_026);
  });

  it.each(letters)("type %s, every row of the tables when REFERENCE_DIR holds them", (type) => {
    const file = path.join(folder ?? "", "nist_tab", `type_${type.toLowerCase()}.tab`);
    if (!folder || !existsSync(file)) {
      process.stdout.write(
        `NOT CHECKED: all rows of NIST type ${type}; REFERENCE_DIR has no nist_tab folder.\n`,
      );
    }
    const table = folder && existsSync(file) ? readNistTable(readFileSync(file, "latin1")) : nistTables[type];
    if (folder) expect(table.length).toBe(rows[type]);
    expect(worstDifference(type, table)).toBeLessThanOrEqual(0.0005);
  });
});

describe("reference functions in more digits", () => {
  it.each([...fixedPoints, ...seebeckGrid])("emf at $celsius °C", ({ celsius, microvolt }) => {
    for (const type of letters) {
      const value = microvolt[type];
      if (value !== undefined) expect(Math.abs(emfOf(type, celsius) - value), type).toBeLessThan(0.00051);
    }
  });

  it.each(seebeckGrid)("Seebeck coefficient at $celsius °C", ({ celsius, slope }) => {
    for (const type of letters) {
      const value = slope[type];
      if (value === undefined) continue;
      const result = seebeck(referenceFunctions[type], celsius);
      expect(result.ok && roundHalfEven(result.value, 4), type).toBe(roundHalfEven(value, 4));
    }
  });

  it.each(otherReferenceFunctions)("$type at $celsius °C: $microvolt µV", ({ type, celsius, microvolt }) => {
    const decimals = microvolt.length - microvolt.indexOf(".") - 1;
    expect(emfOf(type, celsius).toFixed(decimals)).toBe(microvolt);
  });

  it("agrees with the same functions in high precision, when REFERENCE_DIR holds them", () => {
    const file = path.join(folder ?? "", "emf_seebeck_highprec.csv");
    if (!folder || !existsSync(file)) {
      process.stdout.write("NOT CHECKED: emf in high precision; REFERENCE_DIR has no such file.\n");
      return;
    }
    const lines = readFileSync(file, "utf8").trim().split("\n").slice(1);
    expect(lines.length).toBe(931);
    for (const line of lines) {
      const [type, celsius, microvolt, slope] = line.split(",") as [ThermocoupleType, string, string, string];
      const own = seebeck(referenceFunctions[type], Number(celsius));
      expect(Math.abs(emfOf(type, Number(celsius)) - Number(microvolt)), line).toBeLessThan(1e-8);
      expect(own.ok && Math.abs(own.value - Number(slope)), line).toBeLessThan(1e-8);
    }
  });
});

describe("derivatives", () => {
  it.each(types)(
    "the Seebeck coefficient of %s is the slope of its emf, and its slope that of the coefficient",
    (type) => {
      const reference = referenceFunctions[type];
      const { fromCelsius, toCelsius } = temperatureRange(reference);
      for (let t = fromCelsius + 1.03; t < toCelsius - 1; t += 17.7) {
        const [slope, curvature] = [seebeck(reference, t), seebeckSlope(reference, t)];
        const [above, below] = [seebeck(reference, t + 0.01), seebeck(reference, t - 0.01)];
        const difference = (emfOf(type, t + 0.01) - emfOf(type, t - 0.01)) / 0.02;
        expect(slope.ok && Math.abs(slope.value - difference)).toBeLessThan(2e-4);
        expect(above.ok && below.ok).toBe(true);
        if (!above.ok || !below.ok) continue;
        expect(curvature.ok && Math.abs(curvature.value - (above.value - below.value) / 0.02)).toBeLessThan(
          1e-5,
        );
      }
    },
  );

  it("type K at 1000 °C bends by -0.0105 µV/°C²: 0.13 µV for a carry over 5 °C", () => {
    const result = seebeckSlope(referenceFunctions.K, 1000);
    expect(result.ok && result.value.toFixed(4)).toBe("-0.0105");
    expect(result.ok && (Math.abs(result.value) * 0.5 * 25).toFixed(2)).toBe("0.13");
  });
});

describe("zero, feet and joins", () => {
  it.each(types)("%s is zero at 0 °C exactly, but for the constant term of type A", (type) => {
    expect(emfOf(type, 0)).toBe(type === "A" ? 0.71564735 : 0);
  });

  it("type B falls to -2.585 µV at 21.02 °C and is zero again at 42.13 °C", () => {
    expect(emfOf("B", 21.0203).toFixed(5)).toBe("-2.58497");
    const slope = seebeck(referenceFunctions.B, 21.0203);
    expect(slope.ok && Math.abs(slope.value)).toBeLessThan(1e-6);
    expect(Math.abs(emfOf("B", 42.132))).toBeLessThan(1e-4);
  });

  // J, B and R as known from the published coefficients; C and Pt/Pd as found in theirs.
  const jumps = { J: 7.5e-5, B: -2.2e-6, R: -1.7e-6, C: -1.4e-4, "Pt/Pd": 1.3e-3 } as const;
  it.each(types)("%s jumps at its joins as little as known, and its pieces leave no gap", (type) => {
    const pieces: readonly Piece[] = referenceFunctions[type].pieces;
    pieces.slice(1).forEach((piece, i) => {
      const before = pieces[i] as Piece;
      expect(before.toCelsius).toBe(piece.fromCelsius);
      const jump = pieceEmf(piece, piece.fromCelsius) - pieceEmf(before, piece.fromCelsius);
      expect(Math.abs(jump)).toBeLessThan(
        type in jumps ? Math.abs(jumps[type as keyof typeof jumps]) * 1.05 : 2e-6,
      );
      expect(emfOf(type, piece.fromCelsius)).toBe(pieceEmf(before, piece.fromCelsius));
    });
  });

  it.each([
    ["J", 760, jumps.J],
    ["B", 630.615, jumps.B],
    ["R", 1664.5, jumps.R],
    ["C", 630.615, jumps.C],
    ["Pt/Pd", 660.323, jumps["Pt/Pd"]],
  ] as const)("type %s jumps at %d °C by %d µV", (type, celsius, microvolt) => {
    const pieces: readonly Piece[] = referenceFunctions[type].pieces;
    const above = pieces.findIndex((piece) => piece.fromCelsius === celsius);
    const jump = pieceEmf(pieces[above] as Piece, celsius) - pieceEmf(pieces[above - 1] as Piece, celsius);
    expect(jump.toPrecision(2)).toBe(microvolt.toPrecision(2));
  });

  it("type C meets at 630.615 °C in value and slope, and not at 783 °C", () => {
    const [below, above] = referenceFunctions.C.pieces as readonly [Piece, Piece];
    for (const piece of [below, above]) {
      expect(pieceEmf(piece, 630.615).toFixed(3)).toBe("11206.529");
      expect(pieceSeebeck(piece, 630.615).toFixed(4)).toBe("19.5008");
    }
    expect(Math.abs(pieceEmf(below, 783) - pieceEmf(above, 783)).toFixed(0)).toBe("49");
  });

  it("type N changes its slope at 0 °C as published: 26.159 below, 25.929 µV/°C above", () => {
    const [below, above] = referenceFunctions.N.pieces as readonly [Piece, Piece];
    expect(pieceSeebeck(below, 0).toFixed(3)).toBe("26.159");
    expect(pieceSeebeck(above, 0).toFixed(3)).toBe("25.929");
    const atZero = seebeck(referenceFunctions.N, 0);
    expect(atZero.ok && atZero.value.toFixed(3)).toBe("26.159");
  });

  it("type K has its Gaussian above 0 °C only", () => {
    expect(referenceFunctions.K.pieces.map((piece) => "gaussian" in piece)).toEqual([false, true]);
    // Polynomial and Gaussian together leave 2e-6 µV at 0 °C.
    expect(pieceEmf(referenceFunctions.K.pieces[1] as Piece, 0)).toBeCloseTo(1.97e-6, 8);
  });
});

describe("ranges", () => {
  it.each([
    ["K", -270.001],
    ["K", 1372.001],
    ["N", 1300.5],
    ["R", -51],
    ["S", 1769],
    ["B", -0.001],
    ["C", 2316],
    ["Au/Pt", 1000.1],
  ] as const)("%s at %d °C is refused with its range", (type, t) => {
    for (const value of [emf, seebeck, seebeckSlope]) {
      const result = value(referenceFunctions[type], t);
      expect(result.ok).toBe(false);
      if (!result.ok) expect(result.problem.message).toContain(`type ${type} is defined from`);
      if (!result.ok) expect(result.problem.kind).toBe("outside-range");
    }
  });

  it("NaN and infinity are named, never passed on", () => {
    for (const t of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
      for (const value of [emf, seebeck, seebeckSlope]) {
        const result = value(referenceFunctions.N, t);
        expect(!result.ok && result.problem.kind).toBe("not-finite");
      }
    }
  });

  it("IEC 60584-1:2013 ends type K at 1300 °C, though its function goes on to 1372 °C", () => {
    const { K, C } = referenceFunctions;
    expect([-270, 1300].map((t) => isWithinIecRange(K, t))).toEqual([true, true]);
    expect([-270.1, 1300.001, 1372, Number.NaN].map((t) => isWithinIecRange(K, t))).toEqual([
      false,
      false,
      false,
      false,
    ]);
    expect(isWithinIecRange(C, 2315)).toBe(true);
    expect(isWithinIecRange(referenceFunctions["Au/Pt"], 500)).toBe(false);
  });

  it("knows which types are noble and which oxidise in air", () => {
    const named = (trait: "isNoble" | "isOxidisingInAir") =>
      types.filter((type) => referenceFunctions[type][trait]);
    expect(named("isNoble")).toEqual(["B", "R", "S", "Au/Pt", "Pt/Pd"]);
    expect(named("isOxidisingInAir")).toEqual(["C", "A"]);
  });
});
