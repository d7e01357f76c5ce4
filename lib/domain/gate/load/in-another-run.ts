import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";

const source = "the laboratory's open runs";
const remedy =
  "Settle its setpoints (a window, or not reached) and evaluate it first; or say that its load is out of the furnace.";

/** A run holds its furnace and channels while it measures and some of its setpoints are neither decided nor given up. */
const assess = (
  plan: Pick<GatePlan, "places" | "otherRuns" | "scanner" | "configuration">,
): readonly Found[] =>
  plan.otherRuns.flatMap(({ run, scanner, configurationId, channels }): readonly Found[] => [
    ...(configurationId === plan.configuration.id
      ? [
          {
            code: "furnace-in-another-run",
            outcome: "breach",
            subject: run,
            reason: `${plan.configuration.name} is still measuring in run ${run}.`,
            remedy,
            source,
          } as const,
        ]
      : []),
    ...(scanner === plan.scanner?.tag
      ? plan.places
          .filter(({ channel }) => channels.includes(channel))
          .map(
            ({ channel }) =>
              ({
                code: "channel-in-another-run",
                outcome: "breach",
                subject: channel,
                reason: `it is still in use in run ${run}.`,
                remedy,
                source,
              }) as const,
          )
      : []),
  ]);

export const inAnotherRun = {
  code: "channel-in-another-run",
  heading: "load",
  fine: "Furnace and channels are free of every other run that measures.",
  source,
  assess,
} as const satisfies GateCheck;
