import { TypeLetter } from "../evidence/schema";
import { decisionRuleOf } from "../run/decision-rule-of";
import type { CapabilityLine } from "./capability";
import { protections, temperatureUnits, toleranceChoices } from "./labels";
import { workPlaces } from "./line-marks";
import { readSetpoints } from "./setpoint";

/** Fields as they stand in the form now: half typed, so what cannot be read yet is left out and not refused. */
type Typed = Readonly<Record<string, string>>;

const oneOf = <T extends string>(known: readonly T[], value: string | undefined): T | undefined =>
  known.find((one) => one === value);

const positive = (typed: string | undefined): number | null => {
  const text = (typed ?? "").trim();
  return /^\d{1,5}(\.\d{1,6})?$/.test(text) && Number(text) > 0 ? Number(text) : null;
};

/** The lines that can be answered already, each with the position it has in the form. */
export const readTypedLines = (lines: readonly Typed[]): readonly CapabilityLine[] =>
  lines.slice(0, 50).flatMap((line, index) => {
    const typeLetter = TypeLetter.safeParse(line.typeLetter);
    const temperatureUnit = oneOf(temperatureUnits, line.temperatureUnit);
    const protection = oneOf(protections, line.protection);
    if (!typeLetter.success || !temperatureUnit || !protection) return [];
    const read = readSetpoints(line.setpoints ?? "", temperatureUnit);
    if (!read.ok || read.setpoints.length === 0) return [];
    return [
      {
        position: index + 1,
        typeLetter: typeLetter.data,
        protection,
        temperatureUnit,
        setpoints: read.setpoints,
        tolerance: oneOf(toleranceChoices, line.tolerance) ?? "none",
        ownLimit: positive(line.ownLimit),
        marks: {
          performedAt: oneOf(workPlaces, line.performedAt) ?? "laboratory",
          providerId: line.providerId || null,
        },
      },
    ];
  });

/** The rule as far as it is typed: one without its figure asks nothing yet. */
export const readTypedRule = (typed: Typed) =>
  decisionRuleOf({
    decisionRule: typed.decisionRule ?? "none",
    guardBandRatio: typed.guardBandRatio?.trim() === "0" ? 0 : positive(typed.guardBandRatio),
    falseAcceptancePercent: positive(typed.falseAcceptancePercent),
  });
