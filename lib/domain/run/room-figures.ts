import { z } from "zod";
import type { AmbientFindings } from "../calibration/ambient-findings";
import { RoomLimits } from "../gate/policy";

export const roomMoments = ["start", "end"] as const;
export type RoomMoment = (typeof roomMoments)[number];

/** The room as it was told once during a run: as indicated, and with the correction of the instrument's certificate. */
export const RoomFigures = z.strictObject({
  instrument: z.string(),
  certificate: z.string(),
  coverageFactor: z.number(),
  indicatedCelsius: z.number(),
  celsius: z.number(),
  /** U of the instrument's calibration: its drift and what the room does elsewhere are not in it. */
  expandedCelsius: z.number(),
  humidity: z
    .strictObject({ indicatedPercent: z.number(), percent: z.number(), expandedPercent: z.number() })
    .optional(),
  /** Of the procedure at that moment. */
  limits: RoomLimits.optional(),
  /** Why the same moment was recorded again. */
  reason: z.string().optional(),
});
export type RoomFigures = z.output<typeof RoomFigures>;

export const readRoomFigures = (stored: string): RoomFigures => RoomFigures.parse(JSON.parse(stored));

type Indication = { readonly celsius: number; readonly percent?: number };
type Instrument = {
  readonly tag: string;
  readonly certificate: string;
  readonly findings: AmbientFindings;
};

const hundredths = (value: number): number => Number(value.toFixed(2));

/** Indication + correction. Humidity only where the certificate speaks of it. */
export const roomFigures = (
  { celsius, percent }: Indication,
  { tag, certificate, findings }: Instrument,
  limits: RoomLimits | undefined,
): RoomFigures => {
  const { humidity } = findings;
  return {
    ...{ instrument: tag, certificate, coverageFactor: findings.coverageFactor },
    indicatedCelsius: celsius,
    celsius: hundredths(celsius + findings.correctionCelsius),
    expandedCelsius: findings.expandedCelsius,
    ...(humidity && percent !== undefined
      ? {
          humidity: {
            indicatedPercent: percent,
            percent: hundredths(percent + humidity.correctionPercent),
            expandedPercent: humidity.expandedPercent,
          },
        }
      : {}),
    ...(limits ? { limits } : {}),
  };
};

/** What lies outside the limits the room had then, in words; null: nothing, or nobody set any. */
export const outsideLimits = ({ celsius, humidity, limits }: RoomFigures): string | null => {
  if (!limits) return null;
  const { fromCelsius, fromPercent, toCelsius, toPercent } = limits;
  const percent = humidity?.percent;
  const said = [
    ...(celsius < fromCelsius || celsius > toCelsius
      ? [`${celsius} °C, outside ${fromCelsius} °C to ${toCelsius} °C`]
      : []),
    ...(percent !== undefined && (percent < fromPercent || percent > toPercent)
      ? [`${percent} % relative humidity, outside ${fromPercent} % to ${toPercent} %`]
      : []),
  ];
  return said.length === 0 ? null : said.join("; ");
};
