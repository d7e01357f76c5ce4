import { ok, type Result, refuse } from "../refusal";
import type { LineMarks } from "./line-marks";

export type ProviderChoice = { readonly id: string; readonly name: string; readonly isApproved: boolean };

type Standing = {
  readonly state: string;
  readonly approvedFrom: string | null;
  readonly approvedUntil: string | null;
};

/** On this day, YYYY-MM-DD. What it is approved for in particular is the reviewer's question (ISO/IEC 17025:2017, 7.1.1 c). */
export const isApprovedOn = ({ state, approvedFrom, approvedUntil }: Standing, day: string): boolean =>
  state === "approved" &&
  approvedFrom !== null &&
  approvedUntil !== null &&
  approvedFrom <= day &&
  day <= approvedUntil;

/** Work leaves the house to approved providers only (ISO/IEC 17025:2017, 6.6.2). */
export const decideSubcontracting = (
  lines: readonly { readonly marks: LineMarks }[],
  providers: readonly ProviderChoice[],
): Result<"approved"> => {
  const fields = Object.fromEntries(
    lines.flatMap(({ marks }, index) => {
      const known = providers.find(({ id }) => id === marks.providerId);
      return marks.providerId === null || known?.isApproved
        ? []
        : [
            [
              `lines.${index}.providerId`,
              known
                ? `${known.name} is not approved today. Choose another, or have it approved first.`
                : "Choose a provider from the list, or have it recorded and approved first.",
            ],
          ];
    }),
  );
  return Object.keys(fields).length === 0
    ? ok("approved")
    : refuse(
        "rule",
        "A line goes to a provider who is not approved. Nothing was stored; what you typed is still here.",
        fields,
      );
};
