import { composeBudgets } from "../compose-budgets";
import { composeChanges } from "../compose-changes";
import { composeLot } from "../compose-lot";
import { composeRolls } from "../compose-rolls";
import type { CertificateContent } from "../content";
import type { DerivedMember } from "../derived-member";
import { type Comparison, compareFigures } from "./comparison";

type Figures = Readonly<Record<string, string>>;

/** Figures of a structure whose sentences may not be in a language yet: those it prints as they are. */
const figuresOf = (value: object): Figures =>
  Object.fromEntries(
    Object.entries(value).flatMap(([name, figure]) =>
      typeof figure === "string" || typeof figure === "number" ? [[name, String(figure)]] : [],
    ),
  );

const compareLot = (
  lot: NonNullable<CertificateContent["lot"]>,
  members: readonly DerivedMember[],
): readonly Comparison[] => {
  const again = composeLot(members);
  return lot.rows.flatMap(({ setpoint, ...row }, at) => {
    const { setpoint: _, ...computed } = again?.rows[at] ?? { setpoint: "" };
    return compareFigures({ table: "Lot", row: setpoint }, figuresOf(row), figuresOf(computed));
  });
};

/** Of the pieces that the document names for each end. */
const compareRolls = (
  { of }: NonNullable<CertificateContent["rolls"]>,
  members: readonly DerivedMember[],
): readonly Comparison[] =>
  of.flatMap((roll) => {
    const again = composeRolls(members, [roll], "F")?.of[0];
    return roll.rows.flatMap(({ setpoint, celsius, fahrenheit }, at) => {
      const place = { table: `Rolls, ${roll.roll}`, row: setpoint };
      const computed = again?.rows[at];
      return [
        ...compareFigures(place, figuresOf(celsius), figuresOf(computed?.celsius ?? {})),
        ...(fahrenheit
          ? compareFigures(
              { ...place, row: `${setpoint}, °F` },
              figuresOf(fahrenheit),
              figuresOf(computed?.fahrenheit ?? {}),
            )
          : []),
      ];
    });
  });

const compareChanges = (
  changes: NonNullable<CertificateContent["changes"]>,
  members: readonly DerivedMember[],
): readonly Comparison[] => {
  const again = composeChanges(members);
  return changes.flatMap(({ tag, rows }) =>
    rows.flatMap(({ setpoint, ...row }, at) => {
      const computed = again.find((one) => one.tag === tag)?.rows[at];
      return compareFigures(
        { table: `Change by annealing, ${tag}`, row: setpoint },
        figuresOf(row),
        computed ? figuresOf({ ...computed, setpoint: null }) : {},
      );
    }),
  );
};

const budgetsOf = (members: readonly DerivedMember[]) =>
  members.flatMap(({ parts }) =>
    composeBudgets(
      parts,
      parts.points.flatMap((point) => (point.state === "measured" ? [point] : [])),
    ),
  );

/** Line by line in the order of their size; what a line is called is a sentence, not a figure. */
const compareBudgets = (
  budgets: NonNullable<CertificateContent["budgets"]>,
  members: readonly DerivedMember[],
): readonly Comparison[] => {
  const again = budgetsOf(members);
  return budgets.flatMap(
    ({ tag, setpoint, lines, combinedCelsius, coverageFactor, degreesOfFreedom }, at) => {
      const table = `Budget, ${tag}`;
      const computed = again[at];
      const whole = { "u, °C": combinedCelsius, k: coverageFactor, "Degrees of freedom": degreesOfFreedom };
      return [
        ...compareFigures(
          { table, row: setpoint },
          whole,
          computed
            ? {
                "u, °C": String(computed.combinedCelsius),
                k: String(computed.coverageFactor),
                "Degrees of freedom": String(computed.degreesOfFreedom),
              }
            : {},
        ),
        ...lines.flatMap(({ label, effectCelsius, share }, line) =>
          compareFigures(
            { table, row: `${setpoint}, ${label}` },
            { "u, °C": effectCelsius, Share: share },
            computed?.lines[line]
              ? {
                  "u, °C": String(computed.lines[line].effectCelsius),
                  Share: String(computed.lines[line].share),
                }
              : {},
          ),
        ),
      ];
    },
  );
};

/** Figures that rest on several results: of a lot, of annealing, and the budgets. */
export const compareDerived = (
  { lot, rolls, changes, budgets }: CertificateContent,
  members: readonly DerivedMember[],
): readonly Comparison[] => [
  ...(lot ? compareLot(lot, members) : []),
  ...(rolls ? compareRolls(rolls, members) : []),
  ...(changes ? compareChanges(changes, members) : []),
  ...(budgets ? compareBudgets(budgets, members) : []),
];
