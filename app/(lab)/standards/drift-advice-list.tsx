import type { DriftAdvice } from "@/lib/domain/equipment/drift-history";

const signed = (value: number): string => (value < 0 ? "−" : "+") + Math.abs(value).toFixed(2);

const rate = (found: DriftAdvice["perYear"], per: string): string =>
  found
    ? `${signed(found.rate)} °C ${per}, standard uncertainty ${found.standardUncertainty.toFixed(2)} °C`
    : `not to be told ${per}`;

/** What a straight line through its calibrations says; every word of it is advice. */
export function DriftAdviceList({
  advice,
  allowedCelsius,
}: {
  readonly advice: DriftAdvice;
  readonly allowedCelsius: number;
}) {
  const { celsius, perYear, perThousandHours, inAYear, interval, why } = advice;
  return (
    <ul>
      <li>
        At {celsius} °C: {rate(perYear, "a year")}.
      </li>
      <li>{rate(perThousandHours, "in 1000 h above 1000 °C")}.</li>
      {inAYear ? (
        <li>
          A year after the last calibration the next is expected between {signed(inAYear.low)} and{" "}
          {signed(inAYear.high)} °C (95 %), counted from the first.
        </li>
      ) : null}
      <li>
        {interval
          ? interval.endedBy === "drift"
            ? `It stays within the ± ${allowedCelsius} °C of its record for about ${interval.days} days after its last calibration.`
            : `It stays within the ± ${allowedCelsius} °C of its record for longer than three years.`
          : `No interval is suggested: ${why}.`}
      </li>
    </ul>
  );
}
