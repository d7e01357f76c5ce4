import type { ReferenceType } from "../../evidence/schema";
import type { Protection } from "../../run/load-candidates";
import type { Found, GateCheck } from "../finding";
import { commonPractice } from "../finding";
import { isNoble } from "../metal-of";

type Loaded = { readonly tag: string; readonly type: ReferenceType; readonly protection: Protection };
type Facts = {
  readonly references: readonly Loaded[];
  readonly sensors: readonly Loaded[];
  readonly configuration: { readonly kind: "bare-tube" | "equalising-block" };
};

/**
 * Base metal bundled round a platinum reference is normal work; platinum without its own closed, gas-tight alumina
 * sheath beside it, or beside metal sheaths in a block, takes up its vapour and drifts.
 */
const assess = ({ references, sensors, configuration }: Facts): readonly Found[] => {
  const loaded = [...references, ...sensors];
  return loaded.flatMap((item) => {
    if (!isNoble(item.type) || item.protection === "alumina-sheath") return [];
    const neighbour = loaded.find(
      (other) =>
        other !== item &&
        (!isNoble(other.type) ||
          (configuration.kind === "equalising-block" && other.protection === "metal-sheath")),
    );
    return neighbour
      ? [
          {
            code: "platinum-unsheathed",
            outcome: "breach",
            subject: item.tag,
            reason: `its platinum would stand beside ${neighbour.tag} (type ${neighbour.type}) without its own closed alumina sheath, and take up base metal.`,
            remedy: "Give it one, or load it apart.",
            source: commonPractice,
          } as const,
        ]
      : [];
  });
};

export const platinumUnsheathed = {
  code: "platinum-unsheathed",
  heading: "materials",
  fine: "Platinum stands in its own closed alumina sheath wherever base metal or a metal sheath is near.",
  source: commonPractice,
  assess,
} as const satisfies GateCheck;
