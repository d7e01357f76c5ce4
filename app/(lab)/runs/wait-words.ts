import type { StabilityWait } from "@/lib/domain/evidence/await-stability";

type WaitWords = { readonly headline: string; readonly interval: string };

/** The shortest wait is rounded down and the longest up: rounding does not make an interval narrower. */
export function waitWords({ latest, forecast }: StabilityWait): WaitWords {
  if (forecast.kind === "unknown") {
    const reason = `${forecast.reason.charAt(0).toUpperCase()}${forecast.reason.slice(1)}.`;
    return { headline: "Not stable yet", interval: reason };
  }
  if (forecast.kind === "not-by-waiting") {
    return {
      headline: "At rest, but not accepted",
      interval:
        "The drift meets its limit. What is missing does not come by waiting alone: see to the references.",
    };
  }
  const { nowSeconds, fromSeconds, medianSeconds, toSeconds } = forecast.time;
  const least = Math.floor((fromSeconds - nowSeconds) / 60);
  const most = Math.ceil((toSeconds - nowSeconds) / 60);
  const differ =
    latest.differenceCelsius !== null && latest.differenceCelsius > latest.criterion.agreementCelsius;
  return {
    headline: `Stable in about ${Math.max(1, Math.round((medianSeconds - nowSeconds) / 60))} min`,
    interval: `Counted from the last reading; with 90 % probability between ${least} and ${most} min.${
      differ ? " This is the drift alone: whether the references come to agree is not predicted." : ""
    }`,
  };
}
