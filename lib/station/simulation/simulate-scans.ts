import { emf } from "@/lib/metrology/thermocouple/emf";
import { referenceFunctions, type ThermocoupleType } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import type { Truth } from "./draw-truth";
import {
  durationOf,
  type FurnaceProgram,
  type FurnaceResponse,
  furnaceProfile,
  setpointIndexAt,
} from "./furnace-profile";
import type { Random } from "./random";
import { channelInterval, figures, references, scanInterval, sensors, zeroChannel } from "./scenario";

export type SimulatedChannel = {
  readonly channel: string;
  readonly seconds: number[];
  readonly microvolts: number[];
};

const known = (
  outcome: { ok: true; value: number } | { ok: false; problem: { message: string } },
): number => {
  if (!outcome.ok) throw new RangeError(outcome.problem.message);
  return outcome.value;
};

const tableEmf = (type: ThermocoupleType, celsius: number): number =>
  known(emf(referenceFunctions[type], celsius));
const slope = (type: ThermocoupleType, celsius: number): number =>
  known(seebeck(referenceFunctions[type], celsius));

/** Certified deviation of a reference, linear between its points and level outside, µV. */
const certified = (points: readonly (readonly [number, number])[], celsius: number): number => {
  const above = points.findIndex(([at]) => celsius <= at);
  if (above === 0) return points[0]?.[1] ?? 0;
  if (above < 0) return points.at(-1)?.[1] ?? 0;
  const [t0, d0] = points[above - 1] ?? [0, 0];
  const [t1, d1] = points[above] ?? [0, 0];
  return d0 + ((celsius - t0) / (t1 - t0)) * (d1 - d0);
};

/** What the meter would show on this channel at this moment, before noise and rounding, µV. */
type Source = (seconds: number) => number;

const sourcesOf = (program: FurnaceProgram, response: FurnaceResponse, truth: Truth): [string, Source][] => {
  const zone = furnaceProfile(program, response);
  const indexAt = setpointIndexAt(program);
  const common = (channel: string): number =>
    truth.voltmeterMicrovolt + (truth.parasiticMicrovolt.get(channel) ?? 0);

  const referenceSources = references.map((reference): [string, Source] => {
    const own = truth.references.get(reference.id);
    if (!own) throw new RangeError(`no truth drawn for ${reference.id}`);
    return [
      reference.channel,
      (seconds) => {
        const t = zone(seconds) + own.placeCelsius;
        const offCertificate =
          truth.certificateCelsius + own.driftCelsius + truth.occasion(reference.id, indexAt(seconds));
        const table = tableEmf("S", t);
        return (
          table * (1 + own.inhomogeneity) +
          certified(reference.deviations, t) +
          slope("S", t) * offCertificate -
          tableEmf("S", truth.junctionCelsius) +
          common(reference.channel)
        );
      },
    ];
  });

  const sensorSources = sensors.map((sensor): [string, Source] => {
    const own = truth.sensors.get(sensor.id);
    if (!own) throw new RangeError(`no truth drawn for ${sensor.id}`);
    return [
      sensor.channel,
      (seconds) => {
        const t = zone(seconds) + own.placeCelsius;
        return (
          tableEmf(sensor.type, t) * (1 + own.inhomogeneity) +
          own.deviationMicrovolt(t) -
          tableEmf(sensor.type, truth.junctionCelsius) +
          own.leadMicrovolt +
          truth.occasion(sensor.id, indexAt(seconds)) +
          common(sensor.channel)
        );
      },
    ];
  });

  const zero: [string, Source] = [zeroChannel.channel, () => common(zeroChannel.channel)];
  // In a scan the references come first and last, so that drift within it cancels.
  const [first, ...others] = referenceSources;
  return [...(first ? [first] : []), ...sensorSources, ...others, zero];
};

/** Every reading of the run, each at its own time, rounded to the meter's last digit. */
export const simulateScans = (
  program: FurnaceProgram,
  response: FurnaceResponse,
  truth: Truth,
  random: Random,
  secondsBetweenScans: number = scanInterval,
): SimulatedChannel[] => {
  const sources = sourcesOf(program, response, truth);
  const channels = sources.map(([channel]): SimulatedChannel => ({ channel, seconds: [], microvolts: [] }));
  const scans = Math.floor(durationOf(program) / secondsBetweenScans);
  const perMicrovolt = Math.round(1 / figures.voltmeterStepMicrovolt);
  for (let scan = 0; scan < scans; scan++) {
    sources.forEach(([, source], order) => {
      // Tenths of a second are exact in the file: integers of tenths, divided once.
      const seconds = Math.round((scan * secondsBetweenScans + order * channelInterval) * 10) / 10;
      const shown = source(seconds) + random.normal(figures.noiseMicrovolt);
      channels[order]?.seconds.push(seconds);
      channels[order]?.microvolts.push(Math.round(shown * perMicrovolt) / perMicrovolt);
    });
  }
  return channels;
};
