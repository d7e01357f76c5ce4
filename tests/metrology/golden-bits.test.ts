import { expect, it } from "vitest";
import { engineVersion } from "@/lib/metrology/engine-version";
import { GOLDEN, goldenBits } from "./golden-bits";

it("gives the same bits as when this engine version was fixed", () => {
  // A difference here means that some result could change: raise the engine version, then this pair.
  expect({ engineVersion, bits: goldenBits() }).toEqual(GOLDEN);
});
