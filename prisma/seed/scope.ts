import type { ScopeLineInput } from "@/lib/domain/scope/schema";
import { recordScopeLine } from "@/lib/operations/scope/record-line";
import type { Cast } from "./people";
import type { Teller } from "./teller";

type Line = Pick<ScopeLineInput, "typeLetter" | "fromCelsius" | "toCelsius" | "capability">;

/** One of each form. Type K ends at 1000 °C, so that its result at 1100 °C is marked; type R has no line at all. */
const lines: readonly Line[] = [
  {
    typeLetter: "K",
    fromCelsius: 200,
    toCelsius: 1000,
    capability: {
      kind: "table",
      points: [
        { celsius: 200, expandedCelsius: 0.6 },
        { celsius: 600, expandedCelsius: 0.8 },
        { celsius: 1000, expandedCelsius: 1.1 },
      ],
    },
  },
  {
    typeLetter: "N",
    fromCelsius: 200,
    toCelsius: 1200,
    capability: { kind: "proportional", constantCelsius: 0.5, perCelsius: 0.0006 },
  },
  {
    typeLetter: "S",
    fromCelsius: 200,
    toCelsius: 1200,
    capability: { kind: "polynomial", coefficientsCelsius: [0.45, 0.0001, 2e-7] },
  },
];

/** The invented laboratory's scope: data of its own, given by no body. */
export const tellScope = async ({ tell, at, day }: Teller, { manager }: Cast): Promise<void> => {
  for (const line of lines)
    await tell(recordScopeLine, manager, at(280), {
      ...line,
      validFrom: day(285),
      source: "Invented schedule of the demonstration laboratory: given by no body",
    });
};
