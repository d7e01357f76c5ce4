import type { CertificateFunction } from "@/lib/domain/certificate/content";
import { own } from "@/lib/domain/dcc/terms";
import { fahrenheitDifferenceInKelvin, plainNumber } from "./plain-number";
import { column, kelvin, oneTemperature, quantity, single, writtenTemperatures } from "./quantities";
import { caption, composed, nameOf, rich, type Voice } from "./voice";
import { element, type Xml } from "./xml";

/** µV by the power of t in °C. */
const unitOf = (power: number): string => {
  if (power === 0) return "\\micro\\volt";
  return `\\micro\\volt\\per\\degreecelsius${power === 1 ? "" : `\\tothe{${power}}`}`;
};

const coefficients = (voice: Voice, fitted: CertificateFunction): Xml =>
  element(
    "dcc:list",
    [
      nameOf(caption(voice, "coefficients")),
      ...fitted.coefficients.map(({ power, value }) =>
        quantity(
          `basic_coefficient ${own("coefficient")}`,
          composed(voice, (_, word) => `${word("coefficient")} a${power}`),
          single(plainNumber(value), unitOf(power)),
        ),
      ),
    ],
    { refType: own("coefficient") },
  );

/** In kelvin, and beside it in °F where the table is. */
const differences = (fitted: CertificateFunction, of: "correction" | "expanded"): readonly string[] =>
  fitted.rows.map((row) => {
    const plain = plainNumber(row[of]);
    return fitted.unit === "°F" ? fahrenheitDifferenceInKelvin(plain) : plain;
  });

const table = (voice: Voice, fitted: CertificateFunction): Xml => {
  const factors = fitted.rows.map(() => plainNumber(fitted.coverageFactor));
  return element(
    "dcc:list",
    [
      nameOf(caption(voice, "corrections")),
      quantity(
        "basic_referenceValue",
        caption(voice, "temperature"),
        writtenTemperatures(fitted.rows.map((row) => `${row.temperature} ${fitted.unit}`)),
      ),
      quantity(
        own("correction"),
        caption(voice, "correction"),
        column(differences(fitted, "correction"), kelvin, {
          expanded: {
            values: differences(fitted, "expanded"),
            factors,
            probabilities: factors.map(() => "0.95"),
          },
        }),
      ),
    ],
    { refType: own("corrections") },
  );
};

const validity = (voice: Voice, fitted: CertificateFunction): Xml =>
  element(
    "dcc:list",
    [
      quantity("basic_validityRangeMin", caption(voice, "validFrom"), oneTemperature(fitted.fromCelsius)),
      quantity("basic_validityRangeMax", caption(voice, "validTo"), oneTemperature(fitted.toCelsius)),
    ],
    { refType: "basic_validityRange" },
  );

/** The deviation function between the points: what it is, where it holds, coefficients and table. */
export const fittedFunction = (voice: Voice, fitted: CertificateFunction): Xml =>
  element(
    "dcc:result",
    [
      nameOf(caption(voice, "fitted")),
      rich("dcc:description", [
        ...fitted.statements.map(voice.contents),
        ...fitted.rows
          .filter(({ remark }) => remark !== "")
          .map((row) => composed(voice, (say) => `${row.temperature} ${fitted.unit}: ${say(row.remark)}`)),
      ]),
      element("dcc:data", [validity(voice, fitted), coefficients(voice, fitted), table(voice, fitted)]),
    ],
    { refType: own("corrections") },
  );
