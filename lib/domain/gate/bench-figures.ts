import { z } from "zod";
import type { BenchChecks } from "./plan";
import type { RecordBenchChecksInput } from "./schema";

/** One row of the table of bench checks, as stored: the figures as JSON text, named with their units. */
export type BenchRow = { readonly kind: string; readonly channel: string; readonly figures: string };

const Hours = z.object({ hours: z.number() });
const Microvolt = z.object({ microvolt: z.number() });
const VoltagePoint = z.object({ appliedMicrovolt: z.number(), readMicrovolt: z.number() });
const Junction = z.object({
  statedCelsius: z.number(),
  thermometerCelsius: z.number(),
  thermometer: z.string(),
});

const row = (kind: string, channel: string, figures: object): BenchRow => ({
  kind,
  channel,
  figures: JSON.stringify(figures),
});

/** What was typed, as rows. `statedOf`: what the run says of a junction, which the thermometer is held against. */
export const benchRows = (
  input: RecordBenchChecksInput,
  statedOf: (junction: string) => number,
): readonly BenchRow[] => [
  ...(input.warmUpHours === undefined ? [] : [row("warm-up", "", { hours: input.warmUpHours })]),
  ...(input.shortedZeroMicrovolt === undefined
    ? []
    : [row("shorted-zero", "", { microvolt: input.shortedZeroMicrovolt })]),
  ...(input.voltagePoint ? [row("voltage-point", "", input.voltagePoint)] : []),
  ...input.channels.flatMap(({ channel, microvolt }) =>
    microvolt === undefined ? [] : [row("channel-zero", channel, { microvolt })],
  ),
  ...input.junctions.flatMap(({ junction, thermometer, thermometerCelsius }) =>
    thermometerCelsius === undefined
      ? []
      : [
          row("junction-thermometer", junction, {
            statedCelsius: statedOf(junction),
            thermometerCelsius,
            thermometer,
          }),
        ],
  ),
];

/** The last row of each kind and channel, read back; rows come oldest first. */
export const readBenchRows = (rows: readonly BenchRow[]): BenchChecks => {
  const last = [...new Map(rows.map((one) => [`${one.kind} ${one.channel}`, one])).values()];
  const of = (kind: string) =>
    last
      .filter((one) => one.kind === kind)
      .map(({ channel, figures }) => ({ channel, figures: JSON.parse(figures) as unknown }));
  const [warm] = of("warm-up");
  const [zero] = of("shorted-zero");
  const [point] = of("voltage-point");
  return {
    warmUpHours: warm ? Hours.parse(warm.figures).hours : null,
    shortedZeroMicrovolt: zero ? Microvolt.parse(zero.figures).microvolt : null,
    voltagePoint: point ? VoltagePoint.parse(point.figures) : null,
    channels: of("channel-zero").map(({ channel, figures }) => ({
      channel,
      microvolt: Microvolt.parse(figures).microvolt,
    })),
    junctions: of("junction-thermometer").map(({ channel, figures }) => ({
      junction: channel,
      ...Junction.parse(figures),
    })),
  };
};
