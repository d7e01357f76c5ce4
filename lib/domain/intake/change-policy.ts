import { z } from "zod";
import { decimalNumber } from "../order/field";
import { requiredLine, rowVersion } from "../typed-text";
import { type IntakePolicy, policyTypes } from "./policy";

const megaohm = decimalNumber(0.001, 1_000_000, "Write MΩ as a number from 0.001 to 1 000 000.");
const resistivity = decimalNumber(0.01, 10, "Write µΩ·m as a number from 0.01 to 10.");

/** The limits of intake as the quality manager's form sends them. */
export const ChangeIntakePolicyInput = z
  .object({
    version: rowVersion,
    insulationNew: megaohm,
    insulationUsed: megaohm,
    insulationNotKnown: megaohm,
    loopTolerancePercent: decimalNumber(0.1, 100, "Write percent as a number from 0.1 to 100."),
    largestLoopOhm: decimalNumber(1, 1_000_000, "Write Ω as a number from 1 to 1 000 000."),
    resistivity: z.object(
      Object.fromEntries(policyTypes.map((type) => [type, resistivity])) as Record<
        (typeof policyTypes)[number],
        typeof resistivity
      >,
    ),
    reason: requiredLine("Say why: whoever reads this later was not there.", 400),
  })
  .transform(({ version, reason, ...typed }) => {
    const policy: IntakePolicy = {
      leastInsulationMegaohm: {
        new: typed.insulationNew,
        used: typed.insulationUsed,
        notKnown: typed.insulationNotKnown,
      },
      loopTolerancePercent: typed.loopTolerancePercent,
      largestLoopOhm: typed.largestLoopOhm,
      pairResistivityMicroohmMetre: typed.resistivity,
    };
    return { version, reason, policy };
  });
