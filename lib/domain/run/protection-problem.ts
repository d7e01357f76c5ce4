import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import type { ReferenceType } from "../evidence/schema";
import type { Protection } from "./load-candidates";

type Loaded = { readonly tag: string; readonly type: ReferenceType; readonly protection: Protection };

const isPlatinum = (type: ReferenceType): boolean => referenceFunctions[type].isNoble;

/**
 * Base metal bundled round a platinum reference is normal work; platinum without its own closed, gas-tight alumina
 * sheath beside it, or beside metal sheaths in a block, takes up its vapour and drifts (common practice, no source).
 */
export const protectionProblem = (
  loaded: readonly Loaded[],
  configuration: "bare-tube" | "equalising-block",
): { readonly tag: string; readonly message: string } | null => {
  for (const item of loaded) {
    if (!isPlatinum(item.type) || item.protection === "alumina-sheath") continue;
    const neighbour = loaded.find(
      (other) =>
        other !== item &&
        (!isPlatinum(other.type) ||
          (configuration === "equalising-block" && other.protection === "metal-sheath")),
    );
    if (neighbour)
      return {
        tag: item.tag,
        message: `Platinum of ${item.tag} would stand beside ${neighbour.tag} (type ${neighbour.type}) without its own closed alumina sheath, and take up base metal. Give it one, or load it apart.`,
      };
  }
  return null;
};
