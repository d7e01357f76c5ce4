import { type NewsLetter, plural } from "./order-news";

/** Nothing confidential: how many come due by the interval they set, not which. */
export const recallDueLetter = (facts: {
  readonly name: string;
  readonly laboratory: string;
  readonly count: number;
  readonly link: string;
}): NewsLetter => ({
  subject: `${plural(facts.count, "sensor")} of yours ${facts.count === 1 ? "comes" : "come"} due for calibration`,
  body: [
    `Dear ${facts.name},`,
    "",
    `by the interval you set yourselves, ${plural(facts.count, "sensor")} that we calibrated for you ${facts.count === 1 ? "comes" : "come"} due. Which, and when, and a way to request the work again, are here:`,
    "",
    facts.link,
    "",
    "Each sensor is told once for each day it comes due on. You change the interval, or end it, on the same page.",
    "",
    facts.laboratory,
    "",
  ].join("\n"),
});
