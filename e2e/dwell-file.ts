import { emf } from "@/lib/metrology/thermocouple/emf";
import { referenceFunctions, type ThermocoupleType } from "@/lib/metrology/thermocouple/reference-functions";
import { randomFrom } from "@/lib/station/simulation/random";

export type Wired = {
  readonly channel: string;
  /** null = shorted. */
  readonly type: ThermocoupleType | null;
  /** Indication minus temperature, °C. */
  readonly errorCelsius: number;
};

const rampCelsiusPerSecond = 0.5;
const dwellSeconds = 1500;
const dwellInterval = 15;
const rampInterval = 60;
const channelInterval = 0.2;

/** When the furnace is scanned, and how hot it is then: up to each setpoint in turn, and still there. */
const program = (setpointsCelsius: readonly number[]): readonly { seconds: number; celsius: number }[] => {
  const scans: { seconds: number; celsius: number }[] = [];
  let [seconds, celsius] = [0, 25];
  for (const setpoint of setpointsCelsius) {
    for (; celsius < setpoint - rampCelsiusPerSecond * rampInterval; seconds += rampInterval) {
      scans.push({ seconds, celsius });
      celsius += rampCelsiusPerSecond * rampInterval;
    }
    celsius = setpoint + 0.4;
    for (const end = seconds + dwellSeconds; seconds < end; seconds += dwellInterval)
      scans.push({ seconds, celsius });
  }
  return scans;
};

const microvolt = (type: ThermocoupleType, celsius: number): number => {
  const known = emf(referenceFunctions[type], celsius);
  if (!known.ok) throw new RangeError(known.problem.message);
  return known.value;
};

/**
 * A scanner's file of an invented run: junctions at 0 °C, every thermocouple at the same temperature, 0.3 µV of noise. It
 * ends now, as a file does that is uploaded when the furnace has done.
 */
export const dwellFile = (
  channels: readonly Wired[],
  setpointsCelsius: readonly number[],
  seed: number,
): Buffer => {
  const random = randomFrom(seed);
  const scans = program(setpointsCelsius);
  const last = scans.at(-1)?.seconds ?? 0;
  const startedAt = Math.floor(Date.now() / 1000 - last - channels.length * channelInterval) * 1000;
  const lines = scans.flatMap(({ seconds, celsius }) =>
    channels.map(({ channel, type, errorCelsius }, index) => {
      const at = new Date(startedAt + Math.round((seconds + index * channelInterval) * 1000)).toISOString();
      const true_ = type === null ? 0 : microvolt(type, celsius + errorCelsius);
      return `${at},${channel},${(true_ + 0.3 * (2 * random.uniform() - 1)).toFixed(2)}`;
    }),
  );
  return Buffer.from(`time,channel,emf_uV\n${lines.join("\n")}\n`);
};
